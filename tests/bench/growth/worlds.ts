import { readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { projectRoot } from '../../../src/root.ts'
import { openStore } from '../../../src/store/index.ts'
import { type Table, tablesOf } from '../../../src/store/move/tables.ts'
import { hashOfToken } from '../../../src/store/people/tokens.ts'
import { onlyWorkspace } from '../../../src/store/workspaces.ts'
import { postgresqlDatabase, sqliteDatabase, type TestDatabase } from '../../engines.ts'
import { fillSeason, type Size } from './season.ts'

/** A database in which so many workspaces hold a season each. */
export interface Filled {
  database: TestDatabase
  /** Its size with all indexes (bytes). */
  bytes: number
  /** What each workspace's lead sends to show who asks, the first one's first. */
  cookies: string[]
  /** What the scouts' phones of each send. */
  phones: string[][]
}

export const engine = process.env.DATABASE_TEST === 'postgresql' ? 'postgresql' : 'sqlite'

const token = (workspace: number) => `lead-of-the-workspace-number-${workspace}`
const phoneToken = (workspace: number, number: number) => `scout-${number}-of-the-workspace-number-${workspace}`
const cookie = (of: string) => `cyclewright=${of}`

/** A lead, and scouts. */
const people = 20

/** Made one by one, since their tokens differ. */
const ofPeople = new Set(['Workspace', 'Person', 'Device'])

/**
 * Fills the first workspace by the store and makes the others of it within the database. Rows of one table lie there as if all teams had been at
 * their events at the same time: of each record all workspaces have theirs, one behind the other, so that no page holds neighbours of one workspace.
 */
export async function filled(workspaces: number, size: Size): Promise<Filled> {
  const database = engine === 'postgresql' ? await postgresqlDatabase() : sqliteDatabase()
  const store = await openStore(database.url)
  const first = await store.ensureWorkspace(onlyWorkspace)
  await fillSeason(store.workspace(first), size)
  await store.close()
  const schema = readFileSync(join(projectRoot(), 'prisma', 'schema.prisma'), 'utf8')
  const others = Array.from({ length: workspaces - 1 }, (_, index) => `team-${index + 2}`)
  const statements = others.map(
    (id) =>
      `INSERT INTO "Workspace" ("id", "name", "createdAt") VALUES ('${id}', '${id}', '2031-01-01T00:00:00.000+00:00');`,
  )
  for (const table of tablesOf(schema)) if (!ofPeople.has(table.name)) statements.push(multiplied(table, first))
  for (const [index, id] of [first, ...others].entries()) statements.push(...peopleOf(id, index + 1))
  await database.sql([...before, ...statements, ...after].join('\n'))
  return {
    database,
    bytes: await bytesOf(database),
    cookies: [first, ...others].map((_, k) => cookie(token(k + 1))),
    phones: [first, ...others].map((_, k) =>
      Array.from({ length: people - 1 }, (_, scout) => cookie(phoneToken(k + 1, scout + 2))),
    ),
  }
}

const before = engine === 'sqlite' ? ['PRAGMA cache_size = -400000; PRAGMA synchronous = OFF; BEGIN;'] : ['BEGIN;']
// As the engine's own housekeeping leaves it; SQLite has none, and is left without statistics as in use.
const after = engine === 'sqlite' ? ['COMMIT; PRAGMA wal_checkpoint(TRUNCATE);'] : ['COMMIT;']

function multiplied({ name, columns, counted, key }: Table, first: string): string {
  const listed = columns.map((column) => `"${column}"`).join(', ')
  const given = columns.map((column) => (column === 'workspaceId' ? '"one"."id"' : `"rows"."${column}"`)).join(', ')
  const order = (counted === null ? key : [counted]).map((column) => `"${column}"`).join(', ')
  return `CREATE TEMPORARY TABLE "rows" AS SELECT ${listed}, row_number() OVER (ORDER BY ${order}) AS "of all"
      FROM "${name}" WHERE "workspaceId" = '${first}';
    INSERT INTO "${name}" (${listed}) SELECT ${given} FROM "rows" CROSS JOIN "Workspace" AS "one"
      WHERE "one"."id" <> '${first}' ORDER BY "rows"."of all", "one"."id";
    DROP TABLE "rows";`
}

/** A lead, nineteen scouts, and two devices of each. */
function peopleOf(id: string, workspace: number): string[] {
  const at = `'2031-01-01T00:00:00.000+00:00'`
  return Array.from({ length: people }, (_, index) => index + 1).flatMap((number) => {
    const role = number === 1 ? 'lead' : 'scout'
    const device = (which: number) => {
      const known = number === 1 ? token(workspace) : phoneToken(workspace, number)
      const hash = hashOfToken(which === 1 ? known : `${workspace} ${number} ${which}`)
      return `INSERT INTO "Device" ("workspaceId", "id", "person", "name", "tokenHash", "createdAt", "lastSeenAt")
        VALUES ('${id}', 'device-${number}-${which}', 'person-${number}', 'Phone', '${hash}', ${at}, '${new Date().toISOString().replace('Z', '+00:00')}');`
    }
    return [
      `INSERT INTO "Person" ("workspaceId", "id", "nickname", "role", "createdAt") VALUES ('${id}', 'person-${number}', 'Somebody ${number}', '${role}', ${at});`,
      device(1),
      device(2),
    ]
  })
}

async function bytesOf({ file, url, sql }: TestDatabase): Promise<number> {
  if (file !== '') return statSync(file).size
  await sql('VACUUM ANALYZE')
  const [row] = await sql(`SELECT pg_database_size('${new URL(url).pathname.slice(1)}')::float8 AS "bytes"`)
  return row!['bytes'] as number
}
