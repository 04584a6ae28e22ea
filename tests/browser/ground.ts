import { onlyWorkspace } from '../../src/app.ts'
import { seedIfEmpty } from '../../src/seeding.ts'
import { openStore } from '../../src/store/index.ts'

/** What every world is a copy of. */
export interface Ground {
  /** Folder of the screens as their sources are now. */
  screens: string
  /** File of a closed database that holds the demo season; without one each world fills its own. */
  database: string | null
}

/** Writes a database with the demo season and nothing else, as a first start does. */
export async function seededDatabase(file: string): Promise<void> {
  const store = await openStore(`file:${file}`)
  await seedIfEmpty(store, onlyWorkspace)
  await store.close()
}
