import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { MigrationList } from '@prisma/schema-engine-wasm/schema_engine_bg'

/** The migrations of a folder as the schema engine wants them: oldest first, each with its SQL. */
export function readMigrations(folder: string): MigrationList {
  const names = readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort()
  const lockfile = join(folder, 'migration_lock.toml')
  return {
    baseDir: folder,
    lockfile: {
      path: 'migration_lock.toml',
      content: existsSync(lockfile) ? readFileSync(lockfile, 'utf8') : null,
    },
    shadowDbInitScript: '',
    migrationDirectories: names.map((name) => ({
      path: name,
      migrationFile: {
        path: 'migration.sql',
        content: { tag: 'ok', value: readFileSync(join(folder, name, 'migration.sql'), 'utf8') },
      },
    })),
  }
}
