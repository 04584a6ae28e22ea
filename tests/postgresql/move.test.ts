import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest'
import { projectRoot } from '../../src/root.ts'
import { seedIfEmpty } from '../../src/seeding.ts'
import { type MovedTable, moveWorkspace, openStore } from '../../src/store/index.ts'
import { tablesOf } from '../../src/store/move/tables.ts'
import type { WorkspaceStore } from '../../src/store/types.ts'
import { postgresqlDatabase, sqliteDatabase, type TestDatabase } from '../engines.ts'

const name = 'Tern & Söhne'
const note = { person: null, device: null, action: 'test', subject: '', detail: { text: 'ö – \u2028 😀' } }

/** The whole demo, and something in the tables that it leaves empty. */
async function filled({ url }: TestDatabase): Promise<void> {
  const store = await openStore(url)
  await seedIfEmpty(store, name)
  const id = await store.ensureWorkspace(name)
  const team = store.workspace(id)
  const about = { way: 'Über den Steg', places: ['Steg'], load: 1 }
  const round = await team.rounds.open({ sheet: 'sheet', way: 'way', leg: 'collect', about })
  await team.rounds.arrive(round!.code, 'phone-of-somebody')
  await team.rounds.give(round!.code, 'phone-of-somebody', { low: 0.1, likely: 1 / 3, high: 1e300 })
  await team.rounds.close(round!.code)
  const { token } = await store.entrance.claimLink(id, 1)
  await store.entrance.claim(token, { nickname: 'Ada', passphraseHash: 'x', device: { name: 'Laptop' } })
  await team.invitations.create({ role: 'scout', nickname: 'ada', event: null, createdBy: null, hours: 1 })
  const job = await team.jobs.add({ kind: 'match', name: null, request: { seed: 1 } })
  await team.jobs.end(job.id, { state: 'done', done: 1, total: 1, result: [0.1] })
  await team.audit.note(note)
  await store.close()
}

/** A file with all of it. */
let first: TestDatabase

beforeAll(async () => {
  first = sqliteDatabase()
  await filled(first)
})
afterAll(() => first.remove())

async function database(make: () => TestDatabase | Promise<TestDatabase>): Promise<TestDatabase> {
  const made = await make()
  onTestFinished(made.remove)
  return made
}

/** An event and the documents as whoever uses the workspace reads them. */
async function readIn({ url }: TestDatabase): Promise<unknown> {
  const store = await openStore(url)
  const team: WorkspaceStore = store.workspace(await store.ensureWorkspace(name))
  const [event] = await team.list('event')
  const contents = await team.exchange.contents(event!.id)
  const [last] = await team.audit.list({ limit: 1 })
  const all = { documents: await team.list('game', true), contents, jobs: await team.jobs.list(), detail: last!.detail }
  await store.close()
  return all
}

const hashes = (moved: readonly MovedTable[]) => moved.map(({ table, rows, hash }) => [table, rows, hash])

test('A workspace moves from a file to PostgreSQL and back to a file, with the same hashes and the same contents', async () => {
  const second = await database(postgresqlDatabase)
  const third = await database(sqliteDatabase)
  const there = await moveWorkspace({ from: first.url, to: second.url, name })
  const back = await moveWorkspace({ from: second.url, to: third.url, name })
  expect(hashes(back)).toEqual(hashes(there))
  const filledTables = there.filter(({ rows }) => rows > 0).map(({ table }) => table)
  expect(filledTables.length).toBeGreaterThan(15)
  expect(there.find(({ table }) => table === 'FieldRecord')!.rows).toBeGreaterThan(100)
  const [before, between, after] = await Promise.all([first, second, third].map(readIn))
  expect(between).toEqual(before)
  expect(after).toEqual(before)
  // What is there already is not overwritten.
  await expect(moveWorkspace({ from: first.url, to: second.url, name })).rejects.toThrow(/already/)
  await expect(moveWorkspace({ from: first.url, to: third.url, name: 'nobody' })).rejects.toThrow(
    /no workspace “nobody”/,
  )
})

test('Every table of the schema is moved, after those that it points to, and a move that fails leaves nothing behind', async () => {
  const schema = readFileSync(join(projectRoot(), 'prisma', 'schema.prisma'), 'utf8')
  const tables = tablesOf(schema)
  const names = tables.map((table) => table.name)
  expect(names.toSorted()).toEqual([...schema.matchAll(/^model (\w+)/gm)].map(([, model]) => model).toSorted())
  for (const [index, { needs }] of tables.entries())
    for (const other of needs) expect(names.indexOf(other), other).toBeLessThan(index)
  const target = await database(postgresqlDatabase)
  // As a database that changes what is written into it.
  await target.sql(`CREATE FUNCTION spoil() RETURNS trigger AS $$ BEGIN NEW."body" = '{}'; RETURN NEW; END $$ LANGUAGE plpgsql;
    CREATE TRIGGER spoilt BEFORE INSERT ON "FieldRecord" FOR EACH ROW EXECUTE FUNCTION spoil()`)
  await expect(moveWorkspace({ from: first.url, to: target.url, name })).rejects.toThrow(
    /What was written of FieldRecord is not what was read/,
  )
  expect(await target.sql('SELECT * FROM "Workspace"')).toEqual([])
})
