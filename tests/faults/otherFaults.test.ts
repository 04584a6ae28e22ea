import { spawnSync } from 'node:child_process'
import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { Worker } from 'node:worker_threads'
import { expect, onTestFinished, test } from 'vitest'
import type { RowAnswer } from '../../src/model/scouting/index.ts'
import { startServer } from '../api/server.ts'
import { claim } from '../api/team.ts'
import { inLongForm } from '../browser/longForm.ts'
import { scratchFolder } from '../store/scratch.ts'
import { eventId, seen } from './harbourEvent.ts'
import { openEvent } from './openEvent.ts'

const batch = (device: number, count: number) => ({
  device: `phone-${device}`,
  unsent: 0,
  rows: Array.from({ length: count }, (_, sequence) => seen(device, sequence)),
})

const heldIn = ({ answers }: { answers: RowAnswer[] }) => answers.filter(({ outcome }) => outcome === 'held').length

/** A disk of its own in memory; null where this user may mount none. */
function disk(): string | null {
  const folder = join(scratchFolder(), 'disk')
  mkdirSync(folder)
  if (spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=64m', 'tmpfs', folder]).status !== 0) return null
  onTestFinished(() => void spawnSync('umount', ['-l', folder]))
  return folder
}

test.runIf(inLongForm)(
  'A disk that can only be read any more is no acknowledgement; what was acknowledged is shown, and the rest taken when it can be written',
  async ({ skip }) => {
    const folder = disk()
    if (folder === null) return skip('this user may mount no disk')
    const server = await startServer({ file: join(folder, 'event.db') })
    onTestFinished(() => server.close())
    await openEvent(server.url)
    const send = (of: ReturnType<typeof batch>) => server.send('POST', '/api/records', of)
    expect(heldIn((await send(batch(1, 3))).body)).toBe(3)
    const remount = (how: 'ro' | 'rw') => spawnSync('mount', ['-o', `remount,${how}`, folder], { encoding: 'utf8' })
    // While files are open for writing a disk refuses to become read-only, unless it fails by itself: the mount over the folder does it.
    const first = remount('ro')
    if (first.status !== 0) return skip(`the disk does not become read-only here: ${first.stderr}`)
    for (const size of [3, 60]) {
      const refused = await send(batch(2, size))
      expect(refused.status, JSON.stringify(refused.body)).toBeGreaterThanOrEqual(500)
      expect(refused.body).not.toHaveProperty('answers')
    }
    expect((await server.get(`/api/records?event=${eventId}`)).body.records).toHaveLength(3)
    expect(remount('rw').status).toBe(0)
    expect(heldIn((await send(batch(2, 60))).body)).toBe(60)
    expect((await server.get(`/api/records?event=${eventId}`)).body.records).toHaveLength(63)
  },
)

test('A thread that dies while it commits acknowledges nothing that is not there, and the next commit has another', async () => {
  const workers = new Set<Worker>()
  const { postMessage } = Worker.prototype
  Worker.prototype.postMessage = function (this: Worker, ...given: Parameters<typeof postMessage>) {
    workers.add(this)
    return postMessage.apply(this, given)
  }
  onTestFinished(() => {
    Worker.prototype.postMessage = postMessage
  })
  const server = await startServer({ file: join(scratchFolder(), 'event.db') })
  onTestFinished(() => server.close())
  await openEvent(server.url)
  const acknowledged = new Set<string>()
  let refused = 0
  for (let round = 0; round < (inLongForm ? 12 : 3); round++) {
    const sending = Promise.all(
      [1, 2, 3].map(async (phone) => {
        const sent = batch(10 * round + phone, 80)
        const answer = await server.send('POST', '/api/records', sent)
        if (answer.status !== 200) refused++
        else
          for (const { id } of sent.rows.filter((_, row) => answer.body.answers[row].outcome === 'held'))
            acknowledged.add(id)
      }),
    )
    await new Promise((resolve) => setTimeout(resolve, 4 * round))
    // All of the server's threads: those that read and the one that commits.
    await Promise.all([...workers].map((worker) => worker.terminate()))
    workers.clear()
    await sending
  }
  const ids = new Set<string>()
  for (let after = 0; ; ) {
    const { records } = (await server.get(`/api/records?event=${eventId}&after=${after}`)).body
    if (records.length === 0) break
    for (const { row } of records) ids.add(row.id)
    after = records.at(-1).arrival
  }
  expect([...acknowledged].filter((id) => !ids.has(id))).toEqual([])
  // It goes on, whatever was refused: the same again is taken.
  for (let phone = 1; phone <= 3; phone++) {
    const answer = await server.send('POST', '/api/records', batch(phone, 80))
    expect(heldIn(answer.body), `${refused} refused`).toBe(80)
  }
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
