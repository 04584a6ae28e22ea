import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { onTestFinished } from 'vitest'
import { type OpenOptions, openStore, type Store } from '../../src/store/index.ts'

/** A folder for one test, gone when the test is. */
export function scratchFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'store-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}

/** A store on a real file, closed when the test is over. */
export async function scratchStore(
  options: OpenOptions = {},
  file = join(scratchFolder(), 'team.db'),
): Promise<{ store: Store; file: string }> {
  const store = await openStore(`file:${file}`, options)
  onTestFinished(() => store.close())
  return { store, file }
}

export async function scratchWorkspace(options: OpenOptions = {}) {
  const { store, file } = await scratchStore(options)
  return { store, file, team: store.workspace(await store.ensureWorkspace('team')) }
}
