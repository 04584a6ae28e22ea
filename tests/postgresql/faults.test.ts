import { afterEach, expect, test } from 'vitest'
import { hashed } from '../../src/api/records/rows.ts'
import type { Row, RowAnswer } from '../../src/model/scouting/index.ts'
import { type Server, startServer } from '../api/server.ts'
import { inLongForm } from '../browser/longForm.ts'
import { postgresqlDatabase, type TestDatabase } from '../engines.ts'
import { eventId, seen } from '../faults/harbourEvent.ts'
import { openEvent, rowsShown } from '../faults/openEvent.ts'
import { type ServerProcess, startProcess } from '../faults/process.ts'

const closing: (() => Promise<unknown>)[] = []

afterEach(async () => {
  for (const close of closing.splice(0).reverse()) await close()
})

async function database(): Promise<TestDatabase> {
  const made = await postgresqlDatabase()
  closing.push(made.remove)
  return made
}

async function server(on: TestDatabase): Promise<Server> {
  const started = await startServer({ on, pool: { threads: 1 } })
  closing.push(started.close)
  return started
}

interface Known {
  acknowledged: Row[]
  sent: Row[][]
  /** Answers that were none, or said that something went wrong. */
  refused: number
}

const nothing = (): Known => ({ acknowledged: [], sent: [], refused: 0 })

/** One batch as a phone sends it: what is not acknowledged it would send again. */
async function send(url: string, rows: Row[], known: Known): Promise<boolean> {
  known.sent.push(rows)
  try {
    const answer = await fetch(`${url}/api/records`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ device: rows[0]!.device, unsent: 0, rows }),
    })
    if (!answer.ok) throw new Error(String(answer.status))
    const { answers } = (await answer.json()) as { answers: RowAnswer[] }
    known.acknowledged.push(...rows.filter((_, index) => answers[index]?.outcome === 'held'))
    return true
  } catch {
    known.refused++
    return false
  }
}

const rowsOf = (device: number, batch: number, count = 20): Row[] =>
  Array.from({ length: count }, (_, index) => seen(device, batch * count + index))

/** What is there against what was acknowledged. */
async function compared({ sql }: TestDatabase, { acknowledged, sent }: Known) {
  const rows = await sql('SELECT "id", "hash" FROM "FieldRecord"')
  const kept = new Map(rows.map(({ id, hash }) => [String(id), String(hash)]))
  return {
    lost: acknowledged.filter((row) => kept.get(row.id) !== hashed(row).hash).length,
    torn: sent.filter((all) => ![0, all.length].includes(all.filter(({ id }) => kept.has(id)).length)).length,
  }
}

const shown = async (url: string): Promise<string[]> => {
  const answer = await fetch(`${url}/api/records?event=${eventId}&limit=1000`)
  const { records } = (await answer.json()) as { records: { row: Row }[] }
  return records.map(({ row }) => row.id)
}

test.runIf(inLongForm)(
  'Connections to the database that are cut while records come in lose nothing, and the server works on without a new start',
  async () => {
    const on = await database()
    const { url } = await server(on)
    await openEvent(url)
    const known = nothing()
    const wanted = 12
    let going = true
    const phones = [1, 2, 3].map(async (device) => {
      for (let batch = 0; going; batch++) await send(url, rowsOf(device, batch), known)
    })
    let amidst = 0
    for (let round = 0; round < 200 && amidst < wanted; round++) {
      await new Promise((resolve) => setTimeout(resolve, 5 + ((37 * round) % 40)))
      const cut = await on.sql(`SELECT "state", pg_terminate_backend(pid) FROM pg_stat_activity
      WHERE datname = current_database() AND pid <> pg_backend_pid()`)
      amidst += cut.filter(({ state }) => state === 'active' || state === 'idle in transaction').length
    }
    going = false
    await Promise.all(phones)
    // The cuts met somebody at work, and others before and after got through.
    expect(amidst).toBeGreaterThanOrEqual(wanted)
    expect(known.acknowledged.length).toBeGreaterThan(0)
    expect(await compared(on, known)).toEqual({ lost: 0, torn: 0 })
    // However often it was cut, one connection listens.
    const listening = () =>
      on.sql(`SELECT 1 FROM pg_stat_activity WHERE query LIKE 'LISTEN%' AND datname = current_database()`)
    await new Promise((resolve) => setTimeout(resolve, 1_000))
    await expect.poll(listening).toHaveLength(1)
    // Whoever was refused sends the same again; what is shown is what is there.
    const again = nothing()
    for (const rows of known.sent) expect(await send(url, rows, again)).toBe(true)
    expect(again.acknowledged.length).toBe(known.sent.length * 20)
    const ids = new Set(await shown(url))
    const [{ count }] = (await on.sql('SELECT count(*)::int AS "count" FROM "FieldRecord"')) as [{ count: number }]
    expect(count).toBe(known.sent.length * 20)
    expect(ids.size).toBe(Math.min(count, 1000))
  },
)

test.runIf(inLongForm)(
  'Of two processes one is killed at its work: what either acknowledged is there, and the other shows it',
  async () => {
    const on = await database()
    const known = nothing()
    const other = await startProcess(on.url)
    closing.push(other.kill)
    await openEvent(other.url)
    for (let round = 0; round < 4; round++) {
      const victim: ServerProcess = await startProcess(on.url)
      closing.push(victim.kill)
      let going = true
      const phones = [victim, other].flatMap(({ url }, which) =>
        [1, 2].map(async (device) => {
          // A phone whose server is gone gives up here; in life it goes on to the other.
          for (let batch = 0; going; batch++)
            if (!(await send(url, rowsOf(100 * round + 10 * which + device, batch), known)) && url === victim.url)
              return
        }),
      )
      await new Promise((resolve) => setTimeout(resolve, 150 + ((29 * round) % 150)))
      await victim.kill()
      await new Promise((resolve) => setTimeout(resolve, 100))
      going = false
      await Promise.all(phones)
      expect(await compared(on, known), `round ${round}`).toEqual({ lost: 0, torn: 0 })
    }
    expect(known.acknowledged.length).toBeGreaterThan(100)
    const ids = await rowsShown(other.url)
    expect(known.acknowledged.filter(({ id }) => !ids.has(id))).toEqual([])
    expect((await fetch(`${other.url}/ready`)).status).toBe(200)
  },
)
