import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { describe, expect, test } from 'vitest'
import { projectRoot } from '../../src/root.ts'
import { openStore, StoreError } from '../../src/store/index.ts'
import { type Migrated, migrate, schemaDifference } from '../../src/store/migrate.ts'
import { scratchFolder } from './scratch.ts'

const ownMigrations = join(projectRoot(), 'prisma', 'migrations')
const schema = readFileSync(join(projectRoot(), 'prisma', 'schema.prisma'), 'utf8')
const now = () => new Date('2026-01-10T09:00:00Z')

/** The project's migrations and one more that does `sql`. */
function migrationsAnd(folder: string, sql: string): string {
  const migrations = join(folder, 'migrations')
  cpSync(ownMigrations, migrations, { recursive: true })
  mkdirSync(join(migrations, '99991231235959-later'))
  writeFileSync(join(migrations, '99991231235959-later', 'migration.sql'), sql)
  return migrations
}

/** A database of today's version with one document, closed. */
async function olderFile() {
  const folder = scratchFolder()
  const file = join(folder, 'team.db')
  const store = await openStore(`file:${file}`, { now })
  const team = store.workspace(await store.ensureWorkspace('team'))
  await team.save({ kind: 'game', id: 'buoy', name: 'Buoy', body: { points: 3 }, base: null })
  await store.close()
  return { folder, file }
}

async function readBack(url: string, migrations?: string) {
  const seen: Migrated[] = []
  const store = await openStore(url, { now, migrations, migrated: (what) => seen.push(what) })
  const document = await store.workspace(await store.ensureWorkspace('team')).get('game', 'buoy')
  await store.close()
  return { document, migrated: seen[0] }
}

const columns = (file: string) => {
  const database = new Database(file, { readonly: true })
  try {
    return (database.pragma('table_info(Document)') as { name: string }[]).map(({ name }) => name)
  } finally {
    database.close()
  }
}

const added = 'ALTER TABLE "Document" ADD COLUMN "colour" TEXT;'
const broken = `${added}\nINSERT INTO "Nothing" VALUES (1);`

describe('a file of an older version', () => {
  test('is copied first and then brought to the newest schema with all that it held', async () => {
    const { folder, file } = await olderFile()
    const { document, migrated } = await readBack(`file:${file}`, migrationsAnd(folder, added))
    expect(document?.body).toEqual({ points: 3 })
    expect(migrated?.applied).toEqual(['99991231235959-later'])
    expect(columns(file)).toContain('colour')
    expect(migrated?.backup).toBe(join(folder, 'backups', 'team 2026-01-10T09.00.00.000Z.db'))
    expect(columns(migrated!.backup!)).not.toContain('colour')
  })

  test('whose change fails is told where its copy is, is not opened again, and works from the copy', async () => {
    const { folder, file } = await olderFile()
    const migrations = migrationsAnd(folder, broken)
    const copy = join(folder, 'backups', 'team 2026-01-10T09.00.00.000Z.db')
    const first = readBack(`file:${file}`, migrations)
    await expect(first).rejects.toThrow(StoreError)
    await expect(first).rejects.toThrow(copy)
    await expect(readBack(`file:${file}`, migrations)).rejects.toThrow(
      /99991231235959-later .* failed earlier.*backups/,
    )
    for (const suffix of ['', '-wal', '-shm']) rmSync(`${file}${suffix}`, { force: true })
    cpSync(copy, file)
    expect((await readBack(`file:${file}`)).document?.body).toEqual({ points: 3 })
  })
})

describe('no copy is made', () => {
  test('of a database that is new', async () => {
    const folder = scratchFolder()
    expect((await readBack(`file:${join(folder, 'new', 'team.db')}`)).migrated?.backup).toBeNull()
    expect(existsSync(join(folder, 'new', 'backups'))).toBe(false)
  })

  test('where nothing is to be changed', async () => {
    const { folder, file } = await olderFile()
    expect((await readBack(`file:${file}`)).migrated).toEqual({ applied: [], backup: null })
    expect(readdirSync(folder)).not.toContain('backups')
  })
})

describe('a file is refused with a sentence and left as it is', () => {
  test('when a newer version of the program wrote it', async () => {
    const { folder, file } = await olderFile()
    await readBack(`file:${file}`, migrationsAnd(folder, added))
    await expect(readBack(`file:${file}`)).rejects.toThrow(/newer version/)
  })

  test('when a migration was edited after it had been applied', async () => {
    const { folder, file } = await olderFile()
    const migrations = migrationsAnd(folder, added)
    await readBack(`file:${file}`, migrations)
    writeFileSync(join(migrations, '99991231235959-later', 'migration.sql'), added.replace('colour', 'weight'))
    await expect(readBack(`file:${file}`, migrations)).rejects.toThrow(/99991231235959-later was edited/)
  })

  test('when it is another program’s database', async () => {
    const file = join(scratchFolder(), 'other.db')
    new Database(file).exec('CREATE TABLE Plant (name TEXT)').close()
    await expect(readBack(`file:${file}`)).rejects.toThrow(/holds something else/)
  })

  test('when it is no database at all', async () => {
    const file = join(scratchFolder(), 'letter.db')
    writeFileSync(file, 'Dear team, '.repeat(200))
    await expect(readBack(`file:${file}`)).rejects.toThrow(/is not a database, or is damaged/)
    expect(readFileSync(file, 'utf8')).toBe('Dear team, '.repeat(200))
  })
})

describe('the migrations lead to the schema', () => {
  test('as it stands', async () => {
    const file = join(scratchFolder(), 'empty.db')
    await migrate(file, ownMigrations, now)
    expect(await schemaDifference(file, schema)).toBe('')
  })

  test('and the comparison would notice a column without a migration', async () => {
    const file = join(scratchFolder(), 'empty.db')
    await migrate(file, ownMigrations, now)
    const ahead = schema.replace('model Workspace {', 'model Workspace {\n  colour String?')
    expect(await schemaDifference(file, ahead)).toContain('"colour"')
  })
})
