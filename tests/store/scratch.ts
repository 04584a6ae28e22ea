import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { onTestFinished } from 'vitest'
import { type OpenOptions, openStore, type Store } from '../../src/store/index.ts'
import { type TestDatabase, testDatabase } from '../engines.ts'

/** A folder for one test, gone when the test is. */
export function scratchFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'store-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}

/** A database for one test, of the engine that is tested. */
export async function scratchDatabase(): Promise<TestDatabase> {
  const database = await testDatabase()
  onTestFinished(() => database.remove())
  return database
}

/** A store on a real database, closed when the test is over. */
export async function scratchStore(
  options: OpenOptions = {},
): Promise<{ store: Store; database: TestDatabase; file: string }> {
  const database = await scratchDatabase()
  const store = await openStore(database.url, options)
  onTestFinished(() => store.close())
  return { store, database, file: database.file }
}

export async function scratchWorkspace(options: OpenOptions = {}) {
  const { store, database } = await scratchStore(options)
  return { store, database, team: store.workspace(await store.ensureWorkspace('team')) }
}
