import { existsSync, statSync } from 'node:fs'
import { join } from 'node:path'
import type { MigrationList } from '@prisma/schema-engine-wasm/schema_engine_bg'
import Database from 'better-sqlite3'
import { backupFolder } from './backups/files.ts'
import { makeBackup } from './backups/make.ts'
import { type SchemaEngine, withEngine } from './engine.ts'
import { StoreError } from './errors.ts'
import { readMigrations } from './migrations.ts'
import { SqliteFactory } from './sqlite/factory.ts'

const noFilter = { externalTables: [], externalEnums: [] }

export interface Migrated {
  applied: string[]
  /** Path of the copy that was made first; null when there was nothing to copy. */
  backup: string | null
}

/**
 * Brings a database file to the newest schema, after a copy of what it held.
 * Throws a StoreError when the file is newer than the program, was changed by hand, or a migration fails.
 */
export async function migrate(file: string, folder: string, now: () => Date): Promise<Migrated> {
  const migrationsList = readMigrations(folder)
  const hadData = existsSync(file) && statSync(file).size > 0
  if (hadData && !isOurs(file))
    throw new StoreError(`${file} holds something else than this program’s data. Name another in DATABASE_URL.`)
  const factory = new SqliteFactory(file)
  try {
    return await withEngine(factory, async (engine) => {
      if (!hadData) return { applied: await applyMigrations(engine, migrationsList, null), backup: null }
      if ((await unappliedMigrations(engine, migrationsList, wayBack)).length === 0)
        return { applied: [], backup: null }
      const { name } = await makeBackup(file, { reason: 'migration', at: now() })
      const copy = join(backupFolder(file), name)
      return { applied: await applyMigrations(engine, migrationsList, copy), backup: copy }
    })
  } finally {
    await factory.disposeAll()
  }
}

const wayBack = 'Put the copy in the folder backups, made just before, in its place and start again.'

/** Asked of the file itself, because the engine answers a database without its table with an error. */
function isOurs(file: string): boolean {
  const database = new Database(file, { readonly: true })
  try {
    return database.prepare(`SELECT 1 FROM sqlite_master WHERE name = '_prisma_migrations'`).get() !== undefined
  } catch (error) {
    throw new StoreError(`${file} is not a database, or is damaged. Name another in DATABASE_URL.`, error)
  } finally {
    database.close()
  }
}

/** Names of the migrations that a database of ours lacks. @param wayBack for who finds that one failed earlier */
export async function unappliedMigrations(
  engine: SchemaEngine,
  migrationsList: MigrationList,
  wayBack: string,
): Promise<string[]> {
  const state = await engine.diagnoseMigrationHistory({
    migrationsList,
    optInToShadowDatabase: false,
    filters: noFilter,
  })
  if (state.failedMigrationNames.length > 0)
    throw new StoreError(
      `The change ${state.failedMigrationNames.join(', ')} of the database failed earlier. ${wayBack}`,
    )
  if (state.editedMigrationNames.length > 0)
    throw new StoreError(`The migration ${state.editedMigrationNames.join(', ')} was edited after it was applied.`)
  if (state.history === null) return []
  if (state.history.diagnostic !== 'databaseIsBehind')
    throw new StoreError('The database was written by a newer version of this program. Start that version instead.')
  return state.history.unappliedMigrationNames
}

/** @param copy where the state before is kept */
export async function applyMigrations(
  engine: SchemaEngine,
  migrationsList: MigrationList,
  copy: string | null,
): Promise<string[]> {
  try {
    return (await engine.applyMigrations({ migrationsList, filters: noFilter })).appliedMigrationNames
  } catch (error) {
    const kept = copy === null ? '' : ` Its state before is kept in ${copy}.`
    throw new StoreError(`The database could not be brought to the newest version.${kept}`, error)
  }
}

/** SQL that would bring a migrated, open database to `schema`; empty when both agree. */
export async function schemaDifference(file: string, schema: string): Promise<string> {
  const factory = new SqliteFactory(file)
  const files = [{ path: 'schema.prisma', content: schema }]
  try {
    const { stdout } = await withEngine(factory, (engine) =>
      engine.diff({
        from: { tag: 'schemaDatasource', files, configDir: '.' },
        to: { tag: 'schemaDatamodel', files },
        script: true,
        exitCode: null,
        filters: noFilter,
      }),
    )
    return /^-- This is an empty migration/.test(stdout ?? '') ? '' : (stdout ?? '')
  } finally {
    await factory.disposeAll()
  }
}
