import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import pg from 'pg'
import { projectRoot } from '../src/root.ts'
import { openStore } from '../src/store/index.ts'

/** Which engine the tests of the store and of the API run on: the project `postgresql` runs them on the other one. */
export const onPostgresql = (): boolean => process.env.DATABASE_TEST === 'postgresql'

/** A database of a test. */
export interface TestDatabase {
  /** As DATABASE_URL names it. */
  url: string
  /** Its file; empty where it is none. */
  file: string
  /** Statements past the store, and the rows of the last one. */
  sql(text: string): Promise<Record<string, unknown>[]>
  /** Tables that have such a column. */
  tables(column: string): Promise<string[]>
  remove(): Promise<void>
}

/** An empty database of the engine that is tested. @param file where it is to be, if it is a file */
export function testDatabase(file?: string): Promise<TestDatabase> {
  return onPostgresql() ? postgresqlDatabase() : Promise.resolve(sqliteDatabase(file))
}

const names = (rows: Record<string, unknown>[]) => rows.map(({ name }) => String(name))

export function sqliteDatabase(given?: string): TestDatabase {
  const folder = given === undefined ? mkdtempSync(join(tmpdir(), 'store-')) : undefined
  const file = given ?? join(folder!, 'team.db')
  const sql: TestDatabase['sql'] = async (text) => {
    const database = new Database(file)
    try {
      if (/^\s*SELECT/i.test(text)) return database.prepare(text).all() as Record<string, unknown>[]
      database.exec(text)
      return []
    } finally {
      database.close()
    }
  }
  return {
    url: `file:${file}`,
    file,
    sql,
    tables: async (column) =>
      names(
        await sql(`SELECT name FROM sqlite_master WHERE type = 'table' AND sql LIKE '%"${column}"%' ORDER BY name`),
      ),
    remove: async () => {
      if (folder !== undefined) rmSync(folder, { recursive: true, force: true })
    },
  }
}

let cluster: Promise<string> | undefined

/** The address of a server of this worker's own, started when it is first asked for; it ends with the worker. */
function clusterAddress(): Promise<string> {
  cluster ??= startCluster()
  return cluster
}

async function startCluster(): Promise<string> {
  const child = spawnCluster()
  // Neither is to keep the worker from ending.
  child.unref()
  for (const stream of [child.stdin, child.stdout]) (stream as unknown as { unref?(): void }).unref?.()
  return addressOf(child)
}

const spawnCluster = (...given: string[]) =>
  spawn(process.execPath, [join(projectRoot(), 'scripts', 'cluster.js'), ...given], {
    stdio: ['pipe', 'pipe', 'ignore'],
  })

async function addressOf(child: ReturnType<typeof spawnCluster>): Promise<string> {
  const [chunk] = (await Promise.race([
    once(child.stdout, 'data'),
    once(child, 'exit').then(() => [new Error('PostgreSQL does not start here')]),
  ])) as [Buffer | Error]
  if (chunk instanceof Error) throw chunk
  return String(chunk).trim()
}

/** A server in a folder that is kept, at a port that is kept. Throws where it does not start. */
export async function clusterIn(folder: string, port: number): Promise<{ url: string; stop(): Promise<void> }> {
  const child = spawnCluster(folder, String(port))
  const url = await addressOf(child)
  const stop = async () => {
    if (child.exitCode !== null || child.signalCode !== null) return
    const gone = once(child, 'exit')
    child.stdin.end()
    await gone
  }
  return { url, stop }
}

let made = 0
let template: Promise<string> | undefined

/** Asks the server itself. */
async function ask(url: string, text: string): Promise<Record<string, unknown>[]> {
  const client = new pg.Client({ connectionString: url })
  client.on('error', () => {})
  await client.connect()
  try {
    const result: unknown = await client.query(text)
    const last = (Array.isArray(result) ? result.at(-1) : result) as pg.QueryResult
    return last.rows
  } finally {
    await client.end()
  }
}

const named = (address: string, name: string) => address.replace(/[^/]*$/, name)

/** A database with the tables, of which the others are copies: making them takes longer than copying. */
async function filledTemplate(address: string): Promise<string> {
  await ask(address, 'CREATE DATABASE ready')
  await (await openStore(named(address, 'ready'))).close()
  return 'ready'
}

/** Databases that tests are through with, emptied: making one syncs some hundred files. */
const free: string[] = []

const empty = `
  DO $$ DECLARE one record; BEGIN
    SET LOCAL session_replication_role = replica;
    FOR one IN SELECT schemaname, tablename FROM pg_tables WHERE tablename <> '_prisma_migrations'
      AND (schemaname = 'public' OR (schemaname = 'pgboss' AND tablename LIKE 'j%')) LOOP
      EXECUTE format('DELETE FROM %I.%I', one.schemaname, one.tablename);
    END LOOP;
    FOR one IN SELECT sequencename FROM pg_sequences WHERE schemaname = 'public' LOOP
      EXECUTE format('ALTER SEQUENCE public.%I RESTART', one.sequencename);
    END LOOP;
  END $$`

async function urlOfOne(address: string, bare: boolean): Promise<string> {
  const ready = bare ? undefined : free.pop()
  if (ready !== undefined) return ready
  template ??= filledTemplate(address)
  const name = `test_${made++}`
  await ask(address, `CREATE DATABASE ${name} TEMPLATE ${bare ? 'template1' : await template}`)
  return named(address, name)
}

/** A database of its own on this worker's server. @param bare without tables @param migrates the test changes its tables */
export async function postgresqlDatabase({ bare = false, migrates = false } = {}): Promise<TestDatabase> {
  const address = await clusterAddress()
  const url = await urlOfOne(address, bare)
  let asMade = !bare && !migrates
  const sql = (text: string) => {
    // Whoever changes tables does not hand on what they are then.
    if (/\b(CREATE|DROP|ALTER)\b/.test(text)) asMade = false
    return ask(url, text)
  }
  return {
    url,
    file: '',
    sql,
    tables: async (column) =>
      names(
        await sql(
          `SELECT table_name AS name FROM information_schema.columns
            WHERE table_schema = 'public' AND column_name = '${column}' ORDER BY table_name`,
        ),
      ),
    remove: async () => {
      if (!asMade) return
      await ask(url, empty)
      free.push(url)
    },
  }
}
