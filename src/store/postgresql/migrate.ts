import { PrismaPg } from '@prisma/adapter-pg'
import type { SqlMigrationAwareDriverAdapterFactory } from '@prisma/driver-adapter-utils'
import type { Pool } from 'pg'
import { withEngine } from '../engine.ts'
import { StoreError } from '../errors.ts'
import { applyMigrations, type Migrated, unappliedMigrations } from '../migrate.ts'
import { readMigrations } from '../migrations.ts'
import { shown } from './connection.ts'
import { copyDatabase } from './copy.ts'

const wayBack =
  'Nothing of that change is there, but it has to be undone in the list of changes: restore the copy in the folder backups, made just before, and start again.'

/**
 * Brings a database to the newest schema, after a copy of what it held. Only one process may do so at a time.
 * Throws a StoreError when the database is newer than the program, was changed by hand, or a migration fails.
 */
export async function migratePostgresql(of: {
  url: string
  pool: Pool
  migrations: string
  now: () => Date
  copyBefore: boolean
}): Promise<Migrated> {
  const migrationsList = readMigrations(of.migrations)
  const hadData = await holdsOurs(of.pool, of.url)
  return withEngine(factoryOn(of.pool), async (engine) => {
    if (hadData && (await unappliedMigrations(engine, migrationsList, wayBack)).length === 0)
      return { applied: [], backup: null }
    const backup = hadData && of.copyBefore ? await copyDatabase(of.url, of.now()) : null
    return { applied: await applyMigrations(engine, migrationsList, backup), backup }
  })
}

/** Whether there are tables of this program. Throws where there are only others. */
async function holdsOurs(pool: Pool, url: string): Promise<boolean> {
  const { rows } = await pool.query<{ name: string }>(
    `SELECT tablename AS "name" FROM pg_tables WHERE schemaname = 'public'`,
  )
  if (rows.length > 0 && !rows.some(({ name }) => name === '_prisma_migrations'))
    throw new StoreError(`${shown(url)} holds something else than this program’s data. Name another in DATABASE_URL.`)
  return rows.length > 0
}

/**
 * Connections for the schema engine. The driver's adapter cuts a script at its semicolons and sends piece after piece; sent as one, a migration is in
 * force whole or not at all.
 */
function factoryOn(pool: Pool): SqlMigrationAwareDriverAdapterFactory {
  const driver = new PrismaPg(pool, { onPoolError: () => {}, onConnectionError: () => {} })
  return {
    provider: driver.provider,
    adapterName: driver.adapterName,
    connectToShadowDb: () => driver.connectToShadowDb(),
    connect: async () => {
      const adapter = await driver.connect()
      adapter.executeScript = async (script) => {
        await pool.query(script)
      }
      return adapter
    },
  }
}
