import { seedDocuments } from '../seed/index.ts'
import { demoNote } from './model/documents/demo.ts'
import type { Store } from './store/types.ts'

/** Puts the demo season into a store that holds nothing yet, all of it or nothing. Says whether it did. */
export async function seedIfEmpty(store: Store, workspace: string): Promise<boolean> {
  if (!(await store.isEmpty())) return false
  const requests = seedDocuments().map((document) => ({ ...document, base: null, note: demoNote }))
  const outcome = await store.workspace(await store.ensureWorkspace(workspace)).saveAll(requests)
  return 'saved' in outcome
}
