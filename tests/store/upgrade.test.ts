import { cpSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest'
import { projectRoot } from '../../src/root.ts'
import { openStore, type Store } from '../../src/store/index.ts'
import { tablesOf } from '../../src/store/move/tables.ts'
import { eventOf, fillSeason, rowsOf, type Size } from '../bench/growth/season.ts'
import { inLongForm } from '../browser/longForm.ts'
import { onPostgresql, postgresqlDatabase, sqliteDatabase, type TestDatabase } from '../engines.ts'
import { batchOf } from './batches.ts'
import { scratchFolder } from './scratch.ts'

const own = join(projectRoot(), 'prisma', ...(onPostgresql() ? ['postgresql'] : []), 'migrations')
const names = readdirSync(own, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => name)
  .sort()

/** How many migrations an older version knew. In the short form the first version, and the last before today's. */
const versions = names.map((_, index) => index + 1).filter((k) => inLongForm || k === 1 || k === names.length - 1)

const size: Size = { events: 1, teams: 12, matches: 2, observers: 1 }
const event = eventOf(1)

/** Tables that each part of what is read stands in. */
const standsIn = {
  documents: ['Document', 'Revision'],
  rounds: ['Round', 'Guess', 'RoundClosing'],
  jobs: ['Job', 'JobEvent'],
  people: ['Person', 'Device'],
  devices: ['Device'],
  invitations: ['Invitation'],
  audit: ['AuditEntry'],
  matches: ['ScheduledMatch'],
  results: ['OfficialResult'],
  assignments: ['SeatAssignment'],
  records: ['FieldRecord'],
  apart: ['QuarantinedRecord'],
  choices: ['RecordChoice'],
  drills: ['Drill'],
  forecasts: ['Forecast'],
  plans: ['AgreedPlan'],
  selection: ['SelectionLine'],
} as const

type Part = keyof typeof standsIn

/** Everything that a team would look at. */
async function readAll(store: Store): Promise<{ [part in Part]: unknown[] }> {
  const team = store.workspace(await store.ensureWorkspace('team'))
  const documents = [...(await team.list('game')), ...(await team.list('option')), ...(await team.list('event'))]
  const contents = (await team.exchange.contents(event))!
  const { matches, results, assignments, records, apart, choices, drills, forecasts, plans, selection } = contents
  return {
    ...{ matches, results, assignments, records, apart, choices, drills, forecasts, plans, selection },
    documents: await Promise.all(documents.map(({ kind, id }) => team.get(kind, id))),
    rounds: await team.rounds.keep('sheet'),
    jobs: await team.jobs.list(),
    people: await team.people.list(),
    devices: await team.people.devices(),
    invitations: await team.invitations.list(),
    audit: await team.audit.list({ limit: 200 }),
  }
}

/** A database of today with something in every table that an older version may have had. */
let today: TestDatabase
let expected: Awaited<ReturnType<typeof readAll>>

const made = (bare = false) => (onPostgresql() ? postgresqlDatabase({ bare, migrates: bare }) : sqliteDatabase())

beforeAll(async () => {
  today = await made()
  const store = await openStore(today.url)
  const id = await store.ensureWorkspace('team')
  const team = store.workspace(id)
  await fillSeason(team, size)
  for (const { code } of await team.rounds.list('sheet')) await team.rounds.close(code)
  const { token } = await store.entrance.claimLink(id, 1)
  await store.entrance.claim(token, { nickname: 'Ada', passphraseHash: 'x', device: { name: 'Laptop' } })
  await team.invitations.create({ role: 'scout', nickname: 'Bo', event, createdBy: null, hours: 1 })
  await team.records.startDrill(event, null)
  await team.records.choose(event, { match: 'q1', team: '90001', record: null, person: null, reason: 'Why' })
  const other = rowsOf(event, { phone: 100, place: 0 }, size).map((row) => ({ ...row, made: '2031-01-01T10:00:00Z' }))
  await team.records.accept(batchOf(other, 'phone-7'))
  expected = await readAll(store)
  await store.close()
})
afterAll(() => today.remove())

/** Its rows as a version with the first `k` migrations would have them. */
async function olderBy(k: number): Promise<TestDatabase> {
  const migrations = join(scratchFolder(), 'migrations')
  const known = new Set(names.slice(0, k))
  cpSync(own, migrations, {
    recursive: true,
    filter: (path) => !names.some((name) => path.includes(name) && !known.has(name)),
  })
  const older = await made(true)
  onTestFinished(() => older.remove())
  const { openDatabase } = await import('../../src/store/open.ts')
  await (await openDatabase(older.url, { migrations, now: () => new Date() })).close()
  const tables = tablesOf(readFileSync(join(projectRoot(), 'prisma', 'schema.prisma'), 'utf8'))
  const statements: string[] = []
  for (const table of tables) {
    const columns = await columnsIn(older, table.name)
    if (columns.length > 0) statements.push(...(await copied(table.name, columns, table.counted)))
  }
  await older.sql(
    onPostgresql() ? statements.join('\n') : [`ATTACH '${today.file}' AS today;`, ...statements].join('\n'),
  )
  return older
}

async function columnsIn({ sql }: TestDatabase, table: string): Promise<string[]> {
  const rows = await sql(
    onPostgresql()
      ? `SELECT column_name AS name FROM information_schema.columns WHERE table_schema = 'public' AND table_name = '${table}'`
      : `SELECT name FROM pragma_table_info('${table}')`,
  )
  return rows.map(({ name }) => String(name))
}

async function copied(table: string, columns: readonly string[], counted: string | null): Promise<string[]> {
  const listed = columns.map((column) => `"${column}"`).join(', ')
  const into = `INSERT INTO "${table}" (${listed}) SELECT ${listed} FROM`
  if (!onPostgresql()) return [`${into} today."${table}";`]
  const [row] = await today.sql(`SELECT coalesce(json_agg("${table}"), '[]')::text AS "all" FROM "${table}"`)
  const all = String(row!['all']).replaceAll("'", "''")
  const next = `SELECT setval(pg_get_serial_sequence('"${table}"', '${counted}'), (SELECT coalesce(max("${counted}"), 1) FROM "${table}"));`
  return [`${into} json_populate_recordset(NULL::"${table}", '${all}');`, ...(counted === null ? [] : [next])]
}

describe('A database of an earlier version is opened by this one with all that it held, and goes on:', () => {
  test.each(versions)('%i of the migrations', async (k) => {
    const older = await olderBy(k)
    const has = new Map<string, boolean>()
    for (const table of Object.values(standsIn).flat()) has.set(table, (await columnsIn(older, table)).length > 0)
    let applied: string[] = []
    const migrated = (what: { applied: string[] }) => {
      applied = what.applied
    }
    const store = await openStore(older.url, { migrated, copyBefore: false })
    onTestFinished(() => store.close())
    expect(applied).toEqual(names.slice(k))
    const found = await readAll(store)
    for (const [part, tables] of Object.entries(standsIn) as [Part, readonly string[]][]) {
      expect(expected[part].length, part).toBeGreaterThan(0)
      expect(found[part], part).toEqual(tables.every((table) => has.get(table)) ? expected[part] : [])
    }
    // And it takes in what is new.
    const team = store.workspace(await store.ensureWorkspace('team'))
    const { outcomes } = await team.records.accept(batchOf(rowsOf(event, { phone: 8, place: 0 }, size), 'phone-8'))
    expect(outcomes).toEqual([
      { outcome: 'held', again: false },
      { outcome: 'held', again: false },
    ])
    expect(await team.save({ kind: 'option', id: 'new', name: 'New', body: {}, base: null })).toHaveProperty('saved')
    await team.audit.note({ person: null, device: null, action: 'test', subject: '', detail: {} })
  })
})
