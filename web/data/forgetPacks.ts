export const packDatabaseName = 'cyclewright-events'

/** Removes what is kept of events: it rates teams, and whoever uses this device next may not be of ours. */
export function forgetPacks(): void {
  try {
    indexedDB.deleteDatabase(packDatabaseName)
  } catch {
    // A browser that keeps nothing has nothing to remove.
  }
}
