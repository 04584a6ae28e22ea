import { mkdirSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { projectRoot } from '../root.ts'
import type { Database } from './database.ts'
import { StoreError } from './errors.ts'
import { type Migrated, migrate } from './migrate.ts'
import { openSqlite } from './sqlite/database.ts'
import { DatabaseStore } from './store.ts'
import type { Store } from './types.ts'

export interface OpenOptions {
  now?: () => Date
  /** The folder of migrations; the program's own unless a test says otherwise. */
  migrations?: string
  /** SQL that each connection to a file begins with, for tests. */
  further?: string | undefined
  /** Told what was changed in the database before it was opened. */
  migrated?: (what: Migrated) => void
  /** False: a PostgreSQL database is changed without a copy, because whoever starts the program keeps copies elsewhere. */
  copyBefore?: boolean
}

/**
 * Opens the database at `file:…` or `postgresql://…`, brought to the newest schema. Throws a StoreError whose message is for the
 * user.
 */
export async function openStore(url: string, options: OpenOptions = {}): Promise<Store> {
  const now = options.now ?? (() => new Date())
  return new DatabaseStore(await openDatabase(url, { ...options, now }), now)
}

/** The same without what the store makes of it. */
export async function openDatabase(url: string, options: OpenOptions & { now: () => Date }): Promise<Database> {
  const { now, migrations, further, migrated } = options
  if (isPostgresql(url)) {
    // Its parts are loaded by those who use it alone.
    const { openPostgresql } = await import('./postgresql/database.ts')
    return openPostgresql(url, options)
  }
  const file = fileOf(url)
  mkdirSync(dirname(file), { recursive: true })
  const done = await migrate(file, migrations ?? join(projectRoot(), 'prisma', 'migrations'), now)
  migrated?.(done)
  return openSqlite(file, { further, now })
}

export const isPostgresql = (url: string): boolean => /^postgres(ql)?:\/\//.test(url)

/** The path in a `file:` address; a relative one counts from the project's folder. */
export function fileOf(url: string): string {
  if (!url.startsWith('file:'))
    throw new StoreError(
      `DATABASE_URL must begin with file: or postgresql://, got ${JSON.stringify(url.split(':')[0])}.`,
    )
  const path = url.slice('file:'.length)
  return path.startsWith('/') ? path : join(projectRoot(), path)
}
