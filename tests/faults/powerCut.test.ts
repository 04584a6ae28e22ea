import { readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { hashed } from '../../src/api/records/rows.ts'
import type { Row, RowAnswer } from '../../src/model/scouting/index.ts'
import { inLongForm } from '../browser/longForm.ts'
import { scratchFolder } from '../store/scratch.ts'
import { putBack, readLog, recorder, recording, statesAfter } from './disk/recorded.ts'
import { seen } from './harbourEvent.ts'
import { openEvent } from './openEvent.ts'
import { startProcess } from './process.ts'

const states = 150
const phones = 4
const batches = 25
const rowsEach = 20

/** Always the same sequence (Park and Miller, 'minimal standard'; any that is even enough would do). */
function numbers(seed: number): () => number {
  let state = seed
  return () => {
    state = (state * 48_271) % 2_147_483_647
    return state / 2_147_483_647
  }
}

interface Acknowledged {
  row: Row
  /** How long the log was when the answer was there. */
  end: number
}

async function phone(url: string, device: number, told: (rows: Row[]) => void, sent: Row[][]): Promise<void> {
  for (let batch = 0; batch < batches; batch++) {
    // Once in a while it is quiet for as long as the server needs to tidy its log up.
    if (batch % 9 === 8) await new Promise((resolve) => setTimeout(resolve, 1_400))
    const rows = Array.from({ length: rowsEach }, (_, index) => seen(device, batch * rowsEach + index))
    sent.push(rows)
    const body = JSON.stringify({ device: `phone-${device}`, unsent: 0, rows })
    const headers = { 'content-type': 'application/json' }
    const answer = await fetch(`${url}/api/records`, { method: 'POST', headers, body })
    const { answers } = (await answer.json()) as { answers: RowAnswer[] }
    if (answers.every(({ outcome }) => outcome === 'held')) told(rows)
  }
}

/**
 * Every write and every sync of the running server is written down, in its order. Of it states are made that a power cut could leave: what was
 * synced is there, of what was not any sectors of 512 bytes, in any combination. A file system that loses what was synced, or a disk that lies
 * about it, is beyond that.
 */
test.runIf(inLongForm)(
  `Of ${states} states that a power cut could leave each has every row that was acknowledged, and batches whole`,
  async () => {
    const at = scratchFolder()
    const library = recorder(at)
    expect(library, 'there is no compiler here').not.toBeNull()
    const file = join(at, 'event.db')
    const before = await startProcess(file)
    await openEvent(before.url)
    before.child.kill('SIGTERM')
    await new Promise((resolve) => before.child.once('close', resolve))
    const start = new Map([[file, readFileSync(file)]])
    const log = join(at, 'disk.log')
    const acknowledged: Acknowledged[] = []
    const sent: Row[][] = []
    const server = await startProcess(file, 0, recording(library!, { log, prefix: file }))
    try {
      const told = (rows: Row[]) => {
        const end = statSync(log).size
        acknowledged.push(...rows.map((row) => ({ row, end })))
      }
      await Promise.all(Array.from({ length: phones }, (_, index) => phone(server.url, index + 1, told, sent)))
    } finally {
      await server.kill()
    }
    expect(acknowledged.length).toBe(phones * batches * rowsEach)
    const entries = readLog(log)
    // The log was moved to its place in between, so that all of the engine's work was met.
    expect(entries.filter(({ kind, name }) => kind === 'sync' && name === file).length).toBeGreaterThan(1)
    const random = numbers(20_310_315)
    const cuts = Array.from({ length: states }, () => Math.floor(random() * entries.length))
    const copy = join(at, 'copy.db')

    const look = ({ end, files }: { end: number; files: ReadonlyMap<string, Buffer> }) => {
      putBack(files, { from: file, to: copy })
      const database = new Database(copy)
      try {
        const rows = database.prepare('SELECT id, hash FROM FieldRecord').all() as { id: string; hash: string }[]
        const kept = new Map(rows.map(({ id, hash }) => [id, hash]))
        const due = acknowledged.filter((each) => each.end <= end)
        return {
          whole: database.pragma('integrity_check', { simple: true }),
          lost: due.filter(({ row }) => kept.get(row.id) !== hashes.get(row.id)).length,
          torn: sent.filter((rows) => ![0, rows.length].includes(rows.filter(({ id }) => kept.has(id)).length)).length,
        }
      } finally {
        database.close()
      }
    }
    const hashes = new Map(sent.flat().map((row) => [row.id, hashed(row).hash]))
    let looked = 0
    for (const state of statesAfter(entries, { cuts, start, random })) {
      looked++
      expect(look(state), `after ${state.cut} of ${entries.length}`).toEqual({ whole: 'ok', lost: 0, torn: 0 })
    }
    expect(looked).toBe(new Set(cuts).size)
    // On a disk that does not sync this looks otherwise: whatever is lost would be seen.
    let damaged = 0
    for (const state of statesAfter(entries, { cuts: cuts.slice(0, 40), start, random, heeded: false })) {
      try {
        const { whole, lost, torn } = look(state)
        if (whole !== 'ok' || lost + torn > 0) damaged++
      } catch {
        damaged++
      }
    }
    expect(damaged).toBeGreaterThan(10)
  },
  600_000,
)
