import { expect, onTestFinished, test } from 'vitest'
import { hashed } from '../../src/api/records/rows.ts'
import { cellsOf } from '../../src/model/scouting/index.ts'
import { openStore, type Store } from '../../src/store/index.ts'
import type { Batch } from '../../src/store/types.ts'
import { postgresqlDatabase } from '../engines.ts'
import { event, eventId, seen } from '../faults/harbourEvent.ts'

/** Two stores on one database, as two processes have them: they share nothing in memory. */
async function two() {
  const { url, sql, remove } = await postgresqlDatabase()
  onTestFinished(remove)
  const stores = await Promise.all([openStore(url), openStore(url)])
  onTestFinished(async () => {
    await Promise.all(stores.map((store) => store.close()))
  })
  const id = await stores[0].ensureWorkspace('team')
  const teams = stores.map((store: Store) => store.workspace(id))
  return { stores, id, sql, teams: teams as [(typeof teams)[0], (typeof teams)[0]] }
}

const batchOf = (device: number, from = 0, rows = 5): Batch => ({
  device: `phone-${device}`,
  person: null,
  session: null,
  unsent: 0,
  rows: Array.from({ length: rows }, (_, index) => cellsOf(hashed(seen(device, from + index)))),
})

test('Records that come in by two processes at once become visible in the order of their arrivals', async () => {
  const { teams } = await two()
  const [one] = teams
  await one.save({ kind: 'event', id: eventId, name: event.name, body: event, base: null })
  let writing = true
  // Whoever reads on after the newest that was seen misses nothing.
  const readers = teams.map(async ({ records }) => {
    const read: string[] = []
    let newest = 0
    for (let last = false; !last; ) {
      last = !writing
      for (const { arrival, row } of await records.list(eventId, { after: newest })) {
        read.push(row.id)
        newest = arrival
      }
      await records.log(eventId)
    }
    return read
  })
  const batches = Array.from({ length: 24 }, (_, device) => batchOf(device))
  // Each batch by both, as a phone sends it again whose answer got lost.
  const answers = await Promise.all(batches.flatMap((batch) => teams.map(({ records }) => records.accept(batch))))
  writing = false
  const again = answers.map(({ outcomes }) => outcomes.filter((of) => of.outcome === 'held' && of.again).length)
  expect(again.reduce((sum, each) => sum + each, 0)).toBe(24 * 5)
  expect(answers.every(({ receipt }) => receipt.held === 5 && receipt.quarantined === 0)).toBe(true)
  const kept = (await one.records.list(eventId)).map(({ row }) => row.id)
  expect(kept).toHaveLength(24 * 5)
  for (const read of await Promise.all(readers)) expect(read).toEqual(kept)
  for (const { records } of teams) {
    const log = await records.log(eventId)
    expect(log.records.map(({ row }) => row.id)).toEqual(kept)
  }
})

test('A batch that is slow to commit holds back those behind it, so that whoever reads on misses none of its rows', async () => {
  const { teams, sql } = await two()
  const [one, other] = teams
  await one.save({ kind: 'event', id: eventId, name: event.name, body: event, base: null })
  await sql(`CREATE FUNCTION dawdle() RETURNS trigger AS $$ BEGIN PERFORM pg_sleep(0.4); RETURN NULL; END $$ LANGUAGE plpgsql;
    CREATE TRIGGER slow AFTER INSERT ON "FieldRecord" FOR EACH ROW WHEN (NEW."device" = 'phone-1') EXECUTE FUNCTION dawdle()`)
  const slow = one.records.accept(batchOf(1, 0, 1))
  // Its arrivals are given out, and nobody sees them yet.
  const waits = () => sql(`SELECT 1 FROM pg_stat_activity WHERE wait_event = 'PgSleep'`)
  await expect.poll(waits, { interval: 5 }).toHaveLength(1)
  await other.records.accept(batchOf(2, 0, 1))
  const first = await other.records.list(eventId)
  await slow
  const then = await other.records.list(eventId, { after: first.at(-1)!.arrival })
  expect([...first, ...then].map(({ row }) => row.device)).toEqual(['phone-1', 'phone-2'])
})

test('One id with two contents, by two processes at once, is held once and the other content is kept apart', async () => {
  const { teams } = await two()
  const [one, other] = teams
  await one.save({ kind: 'event', id: eventId, name: event.name, body: event, base: null })
  const second = { ...batchOf(1, 0, 1), rows: [cellsOf(hashed(seen(1, 0, { note: 'other' })))] }
  const answers = await Promise.all([one.records.accept(batchOf(1, 0, 1)), other.records.accept(second)])
  const outcomes = answers.map(({ outcomes: [outcome] }) => outcome)
  expect(outcomes).toContainEqual({ outcome: 'held', again: false })
  expect(outcomes).toContainEqual({ outcome: 'apart', reason: 'otherContent' })
  expect((await other.records.receipt('phone-1')).quarantined).toBe(1)
  expect(await one.records.apart(eventId)).toHaveLength(1)
})

test('Of writers of one document by two processes exactly one is saved, and each other is told what is there', async () => {
  const { teams } = await two()
  const pier = { kind: 'option', id: 'pier', name: 'Pier' } as const
  await teams[0].save({ ...pier, body: 'start', base: null })
  const outcomes = await Promise.all(
    Array.from({ length: 10 }, (_, writer) => teams[writer % 2]!.save({ ...pier, body: { writer }, base: 1 })),
  )
  const saved = outcomes.flatMap((outcome) => ('saved' in outcome ? [outcome.saved] : []))
  expect(saved).toHaveLength(1)
  for (const outcome of outcomes)
    if ('conflict' in outcome) expect(outcome.conflict).toMatchObject({ current: saved[0] })
})

test('A link that is good once lets one in, whichever process it is opened at; who leaves is out at both', async () => {
  const { stores, id } = await two()
  const [here, there] = stores
  const { token } = await here.entrance.claimLink(id, 1)
  const claim = (store: Store, nickname: string) =>
    store.entrance.claim(token, { nickname, passphraseHash: 'x', device: { name: 'Laptop' } })
  const entered = await Promise.all([claim(here, 'Ada'), claim(there, 'Bo'), claim(here, 'Cy'), claim(there, 'Di')])
  const lead = entered.flatMap((each) => ('token' in each ? [each] : []))
  expect(lead).toHaveLength(1)
  expect(entered.filter((each) => 'refused' in each && each.refused === 'linkUsed')).toHaveLength(3)
  const session = lead[0]!.token
  for (const { entrance } of stores) expect(await entrance.session(session)).not.toBeNull()
  await here.workspace(id).people.revoke(lead[0]!.session.device.id)
  expect(await here.entrance.session(session)).toBeNull()
  // As soon as its word is there.
  await expect.poll(() => there.entrance.session(session), { timeout: 4_000, interval: 5 }).toBeNull()
})

test('What one process tells the others hear; where the connection broke they know that they may have missed something', async () => {
  const { stores, sql } = await two()
  const [here, there] = stores
  const heard: string[] = []
  let missed = 0
  there.signals.hear('tide', (message) => void heard.push(message))
  there.signals.missed(() => void missed++)
  await here.signals.send('tide', 'high')
  await here.signals.send('wind', 'west')
  await there.signals.send('tide', 'own')
  await expect.poll(() => heard.toSorted(), { interval: 5 }).toEqual(['high', 'own'])
  await sql(
    `SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE query LIKE 'LISTEN%' AND datname = current_database()`,
  )
  await expect.poll(() => missed, { interval: 5 }).toBeGreaterThanOrEqual(2)
  await here.signals.send('tide', 'low')
  await expect.poll(() => heard, { interval: 5 }).toContain('low')
})
