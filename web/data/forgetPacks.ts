export const packDatabaseName = 'cyclewright-events'
export const picksDatabaseName = 'cyclewright-selections'

/** Removes what is kept of events: it rates teams, and whoever uses this device next may not be of ours. */
export function forgetPacks(): void {
  for (const name of [packDatabaseName, picksDatabaseName]) {
    try {
      indexedDB.deleteDatabase(name)
    } catch {
      // A browser that keeps nothing has nothing to remove.
    }
  }
}
