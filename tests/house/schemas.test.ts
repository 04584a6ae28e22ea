import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { orderedByBytes, schemaForPostgresql } from '../../scripts/postgresqlSchema.ts'
import { differenceForPostgresql } from '../../scripts/schemaSteps.ts'
import { projectRoot } from '../../src/root.ts'
import { readMigrations } from '../../src/store/migrations.ts'

const folder = join(projectRoot(), 'prisma')
const schema = readFileSync(join(folder, 'schema.prisma'), 'utf8')

test('PostgreSQL has the schema that SQLite has: after an edit `npm run migration` writes both', async () => {
  const kept = readFileSync(join(folder, 'postgresql', 'schema.prisma'), 'utf8')
  expect(kept).toBe(schemaForPostgresql(schema))
  const more = schema.replace('model Workspace {', 'model Workspace {\n  colour String?')
  expect(orderedByBytes(await differenceForPostgresql(kept, schemaForPostgresql(more)))).toContain(
    '"colour" TEXT COLLATE "C";',
  )
})

test('the migrations of PostgreSQL order every text by its bytes', () => {
  const { migrationDirectories } = readMigrations(join(folder, 'postgresql', 'migrations'))
  const sql = migrationDirectories.map(({ migrationFile }) => JSON.stringify(migrationFile)).join()
  expect(sql).toContain('TEXT COLLATE')
  expect(sql.match(/\bTEXT\b(?! COLLATE)/g)).toBeNull()
})
