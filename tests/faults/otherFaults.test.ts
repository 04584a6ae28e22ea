import { join } from 'node:path'
import { expect, onTestFinished, test } from 'vitest'
import type { RowAnswer } from '../../src/model/scouting/index.ts'
import { startServer } from '../api/server.ts'
import { claim } from '../api/team.ts'
import { scratchFolder } from '../store/scratch.ts'
import { eventId, seen } from './harbourEvent.ts'
import { openEvent } from './openEvent.ts'

const batch = (device: number, count: number) => ({
  device: `phone-${device}`,
  unsent: 0,
  rows: Array.from({ length: count }, (_, sequence) => seen(device, sequence)),
})

const heldIn = ({ answers }: { answers: RowAnswer[] }) => answers.filter(({ outcome }) => outcome === 'held').length

test('A database that can only be read any more acknowledges nothing; what was acknowledged is shown, and the rest taken when it can be written', async () => {
  const file = join(scratchFolder(), 'event.db')
  const before = await startServer({ file })
  await openEvent(before.url)
  expect(heldIn((await before.send('POST', '/api/records', batch(1, 3))).body)).toBe(3)
  await before.close()
  // The engine then answers as on a disk that was mounted for reading (SQLITE_READONLY).
  const server = await startServer({ file, further: 'PRAGMA query_only = 1;' })
  // By the server's own connection, and by the thread's.
  for (const size of [3, 60]) {
    const refused = await server.send('POST', '/api/records', batch(2, size))
    expect(refused.status, JSON.stringify(refused.body)).toBeGreaterThanOrEqual(500)
    expect(refused.body).not.toHaveProperty('answers')
  }
  expect((await server.get(`/api/records?event=${eventId}`)).body.records).toHaveLength(3)
  await server.close()
  const after = await startServer({ file })
  expect(heldIn((await after.send('POST', '/api/records', batch(2, 60))).body)).toBe(60)
  await after.close()
})

test('A clock that jumps moves no order, loses no record and signs nobody out who was just there', async () => {
  let clock = Date.UTC(2031, 2, 15, 10)
  const server = await startServer({ file: join(scratchFolder(), 'event.db'), now: () => new Date(clock) })
  onTestFinished(() => server.close())
  await openEvent(server.url)
  const lead = await claim(server)
  const day = 86_400_000
  // A day ahead, two years back (as of a machine whose battery is empty), and right again.
  const jumps = [day, -2 * 365 * day, 2 * 365 * day - day]
  const sent: string[] = []
  for (const [index, jump] of jumps.entries()) {
    clock += jump
    const rows = batch(index + 1, 4)
    sent.push(...rows.rows.map(({ id }) => id))
    expect(heldIn((await lead.send('POST', '/api/records', rows)).body)).toBe(4)
    expect((await lead.get('/api/people')).status).toBe(200)
  }
  const { records } = (await lead.get(`/api/records?event=${eventId}`)).body
  expect(records.map(({ row }: { row: { id: string } }) => row.id)).toEqual(sent)
  const later = (await lead.get(`/api/records?event=${eventId}&after=${records[3].arrival}`)).body.records
  expect(later.map(({ row }: { row: { id: string } }) => row.id)).toEqual(sent.slice(4))
  expect((await lead.get(`/api/events/${eventId}/board`)).status).toBe(200)
})
