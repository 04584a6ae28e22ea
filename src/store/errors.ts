/** The database can not be used as it is; the message is for the person who starts the server. */
export class StoreError extends Error {
  constructor(message: string, cause?: unknown) {
    super(message, { cause })
    this.name = 'StoreError'
  }
}

/** There is no room left on the disk: nothing of what was to be written is there. */
export class StorageFull extends StoreError {
  constructor(cause?: unknown) {
    super('The disk on which the database lies is full', cause)
    this.name = 'StorageFull'
  }
}

/** Whether the engine refused a write for want of room (SQLITE_FULL, of PostgreSQL 53100), or the file system did. */
export function isFull(error: unknown): boolean {
  for (let each = error, depth = 0; each instanceof Error && depth < 5; each = each.cause, depth++) {
    if (
      /SQLITE_FULL|database or disk is full|ENOSPC|SQLITE_IOERR_WRITE|\b53100\b/.test(
        `${each.message} ${JSON.stringify(each)}`,
      )
    )
      return true
  }
  return false
}
