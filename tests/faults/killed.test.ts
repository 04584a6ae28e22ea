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

const rounds = inLongForm ? 25 : 4
const phones = 4
const rowsEach = 20

/** From the first acknowledgement to the kill (ms): another part of the work in each round. */
const delay = (round: number) => (29 * round) % 150

/** Sends batch after batch until the server is gone; `sent` and `acknowledged` are what a phone would know. */
async function phone(url: string, device: number, { sent, acknowledged }: { sent: Row[][]; acknowledged: Row[] }) {
  for (let batch = 0; ; batch++) {
    const rows = Array.from({ length: rowsEach }, (_, index) => seen(device, batch * rowsEach + index))
    sent.push(rows)
    try {
      const answer = await fetch(`${url}/api/records`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ device: `phone-${device}`, unsent: 0, rows }),
      })
      const { answers } = (await answer.json()) as { answers: RowAnswer[] }
      acknowledged.push(...rows.filter((_, index) => answers[index]?.outcome === 'held'))
    } catch {
      return
    }
  }
}

test(`a server killed ${rounds} times in the middle of its work has every row that it acknowledged, and batches whole`, async () => {
  const file = join(scratchFolder(), 'event.db')
  const known = { sent: [] as Row[][], acknowledged: [] as Row[] }
  for (let round = 0; round < rounds; round++) {
    const server = await startProcess(file)
    try {
      if (round === 0) await openEvent(server.url)
      const before = known.acknowledged.length
      const all = Array.from({ length: phones }, (_, index) => phone(server.url, 1000 * (round + 1) + index, known))
      await expect.poll(() => known.acknowledged.length, { timeout: 20_000, interval: 5 }).toBeGreaterThan(before)
      await new Promise((resolve) => setTimeout(resolve, delay(round)))
      await server.kill()
      await Promise.all(all)
    } finally {
      await server.kill()
    }
  }
  const database = new Database(file)
  const kept = new Map(
    (database.prepare('SELECT id, hash FROM FieldRecord').all() as { id: string; hash: string }[]).map(
      ({ id, hash }) => [id, hash],
    ),
  )
  const lost = known.acknowledged.filter((row) => kept.get(row.id) !== hashed(row).hash)
  const torn = known.sent.filter((rows) => ![0, rows.length].includes(rows.filter(({ id }) => kept.has(id)).length))
  expect(lost).toEqual([])
  expect(torn).toEqual([])
  expect(kept.size).toBeGreaterThanOrEqual(rounds * rowsEach)
  expect(database.pragma('integrity_check', { simple: true })).toBe('ok')
  database.close()
}, 300_000)
