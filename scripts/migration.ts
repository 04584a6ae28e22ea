import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { projectRoot } from '../src/root.ts'
import { migrate, schemaDifference } from '../src/store/migrate.ts'
import { orderedByBytes, schemaForPostgresql } from './postgresqlSchema.ts'
import { differenceForPostgresql } from './schemaSteps.ts'

/** Writes for each engine the migration that brings the database of the existing ones to prisma/schema.prisma. */
async function main(name: string | undefined) {
  if (name === undefined || !/^[a-z0-9-]+$/.test(name)) throw new Error('Usage: npm run migration -- what-it-changes')
  const folder = join(projectRoot(), 'prisma')
  const schema = readFileSync(join(folder, 'schema.prisma'), 'utf8')
  const stamp = new Date().toISOString().replace(/\D/g, '').slice(0, 14)
  const write = (engine: string, migrations: string, sql: string) => {
    if (sql === '') return console.log(`${engine}: the migrations already lead to the schema.`)
    const made = join(migrations, `${stamp}-${name}`)
    mkdirSync(made, { recursive: true })
    writeFileSync(join(made, 'migration.sql'), sql)
    console.log(`${engine}: written ${made}/migration.sql. Read it before you commit it.`)
  }
  await forSqlite(join(folder, 'migrations'), schema, write)
  await forPostgresql(join(folder, 'postgresql'), schema, write)
}

type Write = (engine: string, migrations: string, sql: string) => void

/** The migrations are applied to an empty file, which is compared with the schema. */
async function forSqlite(migrations: string, schema: string, write: Write): Promise<void> {
  const scratch = mkdtempSync(join(tmpdir(), 'migration-'))
  try {
    const file = join(scratch, 'before.db')
    await migrate(file, migrations, () => new Date())
    write('SQLite', migrations, await schemaDifference(file, schema))
  } finally {
    rmSync(scratch, { recursive: true, force: true })
  }
}

/** The schema that the migrations lead to is kept beside them, so that no server has to run here. */
async function forPostgresql(folder: string, schema: string, write: Write): Promise<void> {
  const kept = join(folder, 'schema.prisma')
  const wanted = schemaForPostgresql(schema)
  const sql = await differenceForPostgresql(readFileSync(kept, 'utf8'), wanted)
  write('PostgreSQL', join(folder, 'migrations'), orderedByBytes(sql))
  writeFileSync(kept, wanted)
}

await main(process.argv[2])
