import { expect, test } from 'vitest'
import { event, eventId, seen } from '../faults/harbourEvent.ts'
import { harbour } from '../model/documents/harbour.ts'
import { startServer } from './server.ts'
import { claim, join } from './team.ts'

test('of each phone a lead is told how long it is silent, what it holds, and by which form it records', async () => {
  const server = await startServer()
  const lead = await claim(server)
  const game = harbour()
  const save = (kind: string, body: { id: string }, base: number | null) =>
    lead.send('PUT', `/api/documents/${kind}/${body.id}`, { base, body })
  await save('game', game, null)
  await save('event', event, null)
  const scout = await join(server, lead, { role: 'scout', nickname: 'Ben' })
  const phone = async () => {
    const { phones } = (await lead.get(`/api/events/${eventId}/board`)).body
    return phones.find(({ device }: { device: string }) => device === scout.device)
  }
  expect(await phone()).toMatchObject({ form: null, unsent: 0, held: 0 })
  const row = (sequence: number, form: number) =>
    seen(1, sequence, { scout: scout.id, device: scout.device, game: form })
  const send = (unsent: number, ...rows: unknown[]) =>
    scout.send('POST', '/api/records', { device: scout.device, unsent, rows })
  expect((await send(3, row(1, 2), row(2, 1))).status).toBe(200)
  const told = await phone()
  expect(told).toMatchObject({ form: 1, unsent: 3, held: 2 })
  expect(told.silent).toBeLessThan(120)

  const before = new Date(Date.now() - 1500_000).toISOString().replace('Z', '+00:00')
  await server.database.sql(`UPDATE "Device" SET "lastSeenAt" = '${before}' WHERE "id" = '${scout.device}'`)
  const silent = (await phone()).silent
  expect(silent).toBeGreaterThanOrEqual(1500)
  expect(silent).toBeLessThan(1620)
  // Its next batch is heard.
  await send(0, row(3, 2))
  expect((await phone()).silent).toBeLessThan(120)
  expect(await phone()).toMatchObject({ form: 2, unsent: 0, held: 3 })

  // Signed out it is of no interest, unless it took something along.
  await send(4, row(4, 2))
  expect((await phone()).signedOut).toBe(false)
  expect((await lead.send('DELETE', `/api/devices/${scout.device}`)).status).toBe(200)
  expect(await phone()).toMatchObject({ signedOut: true, unsent: 4 })
  await server.database.sql(`UPDATE "Device" SET "unsent" = 0 WHERE "id" = '${scout.device}'`)
  expect(await phone()).toBeUndefined()
  await server.close()
})
