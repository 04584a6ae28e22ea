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

const rounds = inLongForm ? 10 : 2
const phones = 6
const rowsEach = 20

/** Sends batch after batch until the server takes no more. */
async function phone(url: string, device: number, acknowledged: Row[]): Promise<void> {
  for (let batch = 0; ; batch++) {
    const rows = Array.from({ length: rowsEach }, (_, index) => seen(device, batch * rowsEach + index))
    try {
      const answer = await fetch(`${url}/api/records`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ device: `phone-${device}`, unsent: 0, rows }),
      })
      const { answers } = (await answer.json()) as { answers?: RowAnswer[] }
      // A server that stops says so (503), and takes nothing in.
      if (!answers) return
      acknowledged.push(...rows.filter((_, index) => answers[index]?.outcome === 'held'))
    } catch {
      return
    }
  }
}

test(`a server told to stop in the middle of a burst, ${rounds} times, ends with 0, and answered for all that it took in`, async () => {
  const file = join(scratchFolder(), 'event.db')
  const acknowledged: Row[] = []
  for (let round = 0; round < rounds; round++) {
    const server = await startProcess(file)
    try {
      if (round === 0) await openEvent(server.url)
      const before = acknowledged.length
      const all = Array.from({ length: phones }, (_, index) =>
        phone(server.url, 1000 * (round + 1) + index, acknowledged),
      )
      await expect.poll(() => acknowledged.length, { timeout: 20_000, interval: 5 }).toBeGreaterThan(before)
      await new Promise((resolve) => setTimeout(resolve, 50 + 37 * round))
      const ended = once(server.child, 'exit')
      server.child.kill('SIGTERM')
      expect(await ended).toEqual([0, null])
      await Promise.all(all)
    } finally {
      await server.kill()
    }
  }
  const database = new Database(file)
  const rows = database.prepare('SELECT id, hash FROM FieldRecord').all() as { id: string; hash: string }[]
  const kept = new Map(rows.map(({ id, hash }) => [id, hash]))
  expect(acknowledged.filter((row) => kept.get(row.id) !== hashed(row).hash)).toEqual([])
  // Nothing was taken in without a word: no answer got lost in the stop.
  expect(kept.size).toBe(acknowledged.length)
  expect(database.pragma('integrity_check', { simple: true })).toBe('ok')
  database.close()
}, 300_000)
