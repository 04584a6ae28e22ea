import Database from 'better-sqlite3'
import pg from 'pg'
import { expect, onTestFinished, test } from 'vitest'
import { openStore } from '../../src/store/index.ts'
import { onPostgresql, type TestDatabase } from '../engines.ts'
import { everyCall } from './everyCall.ts'
import { scratchDatabase } from './scratch.ts'

/** A statement that the store sent, and what it was sent with. */
interface Sent {
  text: string
  values: unknown[]
}

/** One step of an engine's plan that reads a table. `by`: columns that narrow it down; empty: it reads all of it. */
interface Step {
  table: string
  by: string
  text: string
}

/** What the store sends while `work` goes on, each statement once. */
async function sentDuring(work: () => Promise<void>): Promise<Sent[]> {
  const sent = new Map<string, Sent>()
  const note = (text: string, values: unknown[] = []) => {
    if (/^\s*(SELECT|INSERT|UPDATE|DELETE)\b/i.test(text) && !sent.has(text)) sent.set(text, { text, values })
  }
  const { prepare } = Database.prototype
  const { query } = pg.Client.prototype
  Database.prototype.prepare = function (this: Database.Database, text: string) {
    note(text)
    return prepare.call(this, text)
  } as typeof prepare
  pg.Client.prototype.query = function (this: pg.Client, ...given: unknown[]) {
    const [first, values] = given as [string | { text: string; values?: unknown[] }, unknown[] | undefined]
    if (typeof first === 'string') note(first, Array.isArray(values) ? values : [])
    else note(first.text, first.values ?? (Array.isArray(values) ? values : []))
    return (query as (...of: unknown[]) => unknown).apply(this, given)
  } as typeof query
  try {
    await work()
  } finally {
    Database.prototype.prepare = prepare
    pg.Client.prototype.query = query
  }
  return [...sent.values()]
}

/** How SQLite would go about it. It has no statistics, so that it decides by the indexes alone, as in use. */
function inSqlite(file: string, all: readonly Sent[]): Step[] {
  const database = new Database(file, { readonly: true })
  onTestFinished(() => void database.close())
  return all.flatMap(({ text }) => {
    const empty = Array((text.match(/\?/g) ?? []).length).fill(null)
    const rows = database.prepare(`EXPLAIN QUERY PLAN ${text}`).all(...empty) as { detail: string }[]
    return rows.flatMap(({ detail }) => {
      const [, what, alias] = /^(SCAN|SEARCH) (?:main\.)?(\w+)(?! VIRTUAL|-ROW)\b/.exec(detail) ?? []
      if (what === undefined || alias === undefined || /VIRTUAL TABLE|VALUES CLAUSE/.test(detail)) return []
      const table = new RegExp(`JOIN \`main\`\\.\`(\\w+)\` AS \`${alias}\``).exec(text)?.[1] ?? alias
      const by = what === 'SCAN' ? '' : (/\(([^)]*)\)/.exec(detail)?.[1] ?? '')
      return [{ table, by, text }]
    })
  })
}

interface Node {
  'Node Type': string
  'Relation Name'?: string
  'Index Cond'?: string
  'Recheck Cond'?: string
  Plans?: Node[]
}

/** How PostgreSQL would go about it if it read a table as a whole only where no index helps: so small a one it would read anyway. */
async function inPostgresql(url: string, all: readonly Sent[]): Promise<Step[]> {
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  try {
    await client.query('SET enable_seqscan = off')
    const steps: Step[] = []
    for (const { text, values } of all) {
      const { rows } = await client.query(`EXPLAIN (FORMAT JSON) ${text}`, values)
      const visit = (node: Node) => {
        const table = node['Relation Name']
        const by = node['Index Cond'] ?? node['Recheck Cond'] ?? ''
        if (table && /Scan$/.test(node['Node Type'])) steps.push({ table, by, text })
        for (const inner of node.Plans ?? []) visit(inner)
      }
      visit(rows[0]['QUERY PLAN'][0].Plan)
    }
    return steps
  } finally {
    await client.end()
  }
}

/** What may read a table as a whole, and why. */
const mayReadAll: readonly { table: string; when: RegExp; because: string }[] = [
  {
    table: 'Document',
    when: /^SELECT(?!.*ORDER BY).* WHERE 1=1 LIMIT/,
    because: 'whether there is any: the first row that is met is the answer',
  },
  {
    table: 'Person',
    when: /^SELECT(?!.*ORDER BY).* WHERE 1=1 LIMIT/,
    because: 'whether the server belongs to somebody: likewise',
  },
  { table: 'ClaimLink', when: /ClaimLink/, because: 'one row a workspace, asked for where a server starts' },
  {
    table: 'ClaimLink',
    when: /^INSERT INTO `main`\.`Workspace`/,
    because: 'named by SQLite for keys that are changed, which an insertion does not do',
  },
]

/** What may read all records of a workspace. */
const mayReadAllRecords: readonly { when: RegExp; because: string }[] = [
  {
    when: /`replaces` (IN|=)/,
    because: 'a correction by hand, one at a time; an index would cost every record that comes in',
  },
  {
    when: /`scout` = |`person` = |`body` LIKE/,
    because: 'all that is held of one person, which leads ask for once in a while, and its deletion',
  },
  { when: /^INSERT INTO `main`\.`Workspace`/, because: 'as above' },
]

const stepsIn = ({ url, file }: TestDatabase, sent: readonly Sent[]) =>
  onPostgresql() ? inPostgresql(url, sent) : inSqlite(file, sent)

test('Nothing that the store asks reads a table as a whole, nor more of the records than an event’s', async () => {
  const database = await scratchDatabase()
  const store = await openStore(database.url)
  onTestFinished(() => store.close())
  let missed: string[] = []
  const sent = await sentDuring(async () => {
    missed = await everyCall(store)
  })
  // Whoever adds a method calls it there, so that its questions are looked at.
  expect(missed).toEqual([])
  const steps = await stepsIn(database, sent)
  const tables = new Set(steps.map(({ table }) => table))
  for (const table of ['FieldRecord', 'Revision', 'AuditEntry', 'Guess', 'SelectionLine', 'Forecast', 'Device'])
    expect(tables).toContain(table)
  const told = ({ table, text }: Step) => `${table}: ${text.slice(0, 2000)}`
  const whole = steps.filter(
    (step) =>
      step.by === '' &&
      step.table !== 'sub' &&
      !mayReadAll.some(({ table, when }) => table === step.table && when.test(flat(step.text))),
  )
  expect(whole.map(told)).toEqual([])
  // PostgreSQL weighs indexes by how much there is; how far each goes is seen where that is not known.
  if (onPostgresql()) return
  const wide = steps.filter(
    ({ table, by, text }) =>
      table === 'FieldRecord' && by === 'workspaceId=?' && !mayReadAllRecords.some(({ when }) => when.test(flat(text))),
  )
  expect(wide.map(told)).toEqual([])
})

const flat = (text: string): string => text.replaceAll(/\s+/g, ' ').trim()

test('and a question without an index is noticed', async () => {
  const database = await scratchDatabase()
  const store = await openStore(database.url)
  onTestFinished(() => store.close())
  const text = onPostgresql()
    ? 'SELECT * FROM "FieldRecord" WHERE "scout" = $1'
    : 'SELECT * FROM "FieldRecord" WHERE "scout" = ?'
  const [step] = await stepsIn(database, [{ text, values: ['x'] }])
  expect(step).toEqual({ table: 'FieldRecord', by: '', text })
})
