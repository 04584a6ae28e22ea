import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { projectRoot } from '../src/root.ts'
import { migrate, schemaDifference } from '../src/store/migrate.ts'

/** Writes the migration that brings the database of the existing ones to prisma/schema.prisma. */
async function main(name: string | undefined) {
  if (name === undefined || !/^[a-z0-9-]+$/.test(name)) throw new Error('Usage: npm run migration -- what-it-changes')
  const folder = join(projectRoot(), 'prisma', 'migrations')
  const scratch = mkdtempSync(join(tmpdir(), 'migration-'))
  try {
    const file = join(scratch, 'before.db')
    await migrate(file, folder, () => new Date())
    const sql = await schemaDifference(file, readFileSync(join(folder, '..', 'schema.prisma'), 'utf8'))
    if (sql === '') return console.log('The migrations already lead to the schema.')
    const stamp = new Date().toISOString().replace(/\D/g, '').slice(0, 14)
    const made = join(folder, `${stamp}-${name}`)
    mkdirSync(made)
    writeFileSync(join(made, 'migration.sql'), sql)
    console.log(`Written: ${made}/migration.sql. Read it before you commit it.`)
  } finally {
    rmSync(scratch, { recursive: true, force: true })
  }
}

await main(process.argv[2])
