import pg from 'pg'
import { StoreError } from '../errors.ts'

/** Connections of one process at most. */
const most = 16

/** Of an address, what may be shown: a password may stand before the host. */
export function shown(url: string): string {
  try {
    const { host, pathname } = new URL(url)
    return `${host}${pathname}`
  } catch {
    return 'the address in DATABASE_URL'
  }
}

/** What every connection is set to, whatever the role's or the database's own settings say. */
const options = '-c synchronous_commit=on -c TimeZone=UTC'

const common = { keepAlive: true, application_name: 'cyclewright', connectionTimeoutMillis: 20_000, options }

/** One connection that stays, for what belongs to it: a lock, or what it hears. Not connected yet. */
export const lastingClient = (url: string): pg.Client => new pg.Client({ ...common, connectionString: url })

/** Throws a StoreError where nobody answers at the address, or what answers would not keep what it acknowledged. */
export async function poolAt(url: string): Promise<pg.Pool> {
  const pool = new pg.Pool({ ...common, connectionString: url, max: most })
  // A connection that breaks while nobody uses it is replaced when somebody needs one.
  pool.on('error', () => {})
  pool.on('connect', (client) => {
    client.on('error', () => {})
  })
  try {
    await assertDurable(pool)
    return pool
  } catch (error) {
    await pool.end()
    throw error
  }
}

export interface Durability {
  synchronousCommit: string
  fsync: string
  fullPageWrites: string
}

export async function durabilityOf(pool: Pick<pg.Pool, 'query'>): Promise<Durability> {
  const { rows } = await pool.query<Durability>(
    `SELECT current_setting('synchronous_commit') AS "synchronousCommit", current_setting('fsync') AS "fsync",
      current_setting('full_page_writes') AS "fullPageWrites"`,
  )
  return rows[0]!
}

/** Throws a StoreError that names the setting by which a power cut would lose what was acknowledged. */
export async function assertDurable(pool: Pick<pg.Pool, 'query'>): Promise<void> {
  let found: Durability
  try {
    found = await durabilityOf(pool)
  } catch (error) {
    throw new StoreError(`The database does not let this program in: ${(error as Error).message}`, error)
  }
  const wrong = Object.entries({ fsync: found.fsync, full_page_writes: found.fullPageWrites }).find(
    ([, value]) => value !== 'on',
  )
  if (wrong)
    throw new StoreError(
      `The database server runs with ${wrong[0]} = ${wrong[1]}, so a power cut could lose what was saved. Set it to on and start again.`,
    )
  if (found.synchronousCommit === 'off')
    throw new StoreError('The database does not accept synchronous_commit = on, so saved work could be lost.')
}
