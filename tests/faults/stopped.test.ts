import { once } from 'node:events'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { hashed } from '../../src/api/records/rows.ts'
import type { Row, RowAnswer } from '../../src/model/scouting/index.ts'
import { inLongForm } from '../browser/longForm.ts'
import { scratchFolder } from '../store/scratch.ts'
import { seen } from './harbourEvent.ts'
import { openEvent } from './openEvent.ts'
import { startProcess } from './process.ts'

const rounds = inLongForm ? 4 : 1
const phones = 6
/** So many that a batch is under way for a while. */
const rowsEach = 200
/** A request that was sent so long ago (ms) is surely read. */
const surely = 60

/** What the phones know. */
interface Known {
  acknowledged: Row[]
  /** When requests were sent that are not answered yet, by their number. */
  pending: Map<number, number>
  answered: Set<number>
}

let sent = 0

/** Sends batch after batch until the server takes no more. */
async function phone(url: string, device: number, { acknowledged, pending, answered }: Known): Promise<void> {
  for (let batch = 0; ; batch++) {
    const rows = Array.from({ length: rowsEach }, (_, index) => seen(device, batch * rowsEach + index))
    const request = sent++
    pending.set(request, performance.now())
    try {
      const answer = await fetch(`${url}/api/records`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ device: `phone-${device}`, unsent: 0, rows }),
      })
      const { answers } = (await answer.json()) as { answers?: RowAnswer[] }
      answered.add(request)
      // A server that stops says so (503) to what it reads afterwards, and takes nothing of it in.
      if (!answers) return
      acknowledged.push(...rows.filter((_, index) => answers[index]?.outcome === 'held'))
    } catch {
      return
    } finally {
      pending.delete(request)
    }
  }
}

test(`a server told to stop in the middle of a burst (${rounds}) answers what is under way, ends with 0, and kept nothing without a word`, async () => {
  const file = join(scratchFolder(), 'event.db')
  const known: Known = { acknowledged: [], pending: new Map(), answered: new Set() }
  for (let round = 0; round < rounds; round++) {
    const server = await startProcess(file)
    try {
      if (round === 0) await openEvent(server.url)
      const before = known.acknowledged.length
      const all = Array.from({ length: phones }, (_, index) => phone(server.url, 1000 * (round + 1) + index, known))
      const underWay = () => [...known.pending].filter(([, at]) => performance.now() - at > surely).map(([id]) => id)
      await expect.poll(() => known.acknowledged.length, { timeout: 20_000, interval: 1 }).toBeGreaterThan(before)
      await expect.poll(() => underWay().length, { timeout: 20_000, interval: 1 }).toBeGreaterThan(0)
      const asked = underWay()
      const ended = once(server.child, 'exit')
      server.child.kill('SIGTERM')
      expect(await ended).toEqual([0, null])
      await Promise.all(all)
      expect(asked.filter((request) => !known.answered.has(request))).toEqual([])
    } finally {
      await server.kill()
    }
  }
  const database = new Database(file)
  const rows = database.prepare('SELECT id, hash FROM FieldRecord').all() as { id: string; hash: string }[]
  const kept = new Map(rows.map(({ id, hash }) => [id, hash]))
  expect(known.acknowledged.filter((row) => kept.get(row.id) !== hashed(row).hash)).toEqual([])
  // No answer got lost in the stop.
  expect(kept.size).toBe(known.acknowledged.length)
  expect(database.pragma('integrity_check', { simple: true })).toBe('ok')
  database.close()
}, 300_000)
