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

/** What an error and those behind it say, with the codes that an engine puts into it. */
function saidBy(error: unknown): string[] {
  const said: string[] = []
  for (let each = error; each instanceof Error && said.length < 5; each = each.cause) {
    said.push(`${each.message} ${written(each)}`)
  }
  return said
}

function written(error: Error): string {
  try {
    return JSON.stringify(error)
  } catch {
    return ''
  }
}

/** Whether the engine refused a write for want of room (SQLITE_FULL, of PostgreSQL 53100), or the file system did. */
export const isFull = (error: unknown): boolean =>
  saidBy(error).some((said) => /SQLITE_FULL|database or disk is full|ENOSPC|SQLITE_IOERR_WRITE|\b53100\b/.test(said))

/**
 * Whether a database server could not be asked, or went away while it was: its connection was refused, cut or not made in time (also
 * by the client's codes), or it says that it ends or begins (57P01 to 57P03), has no connection left (53300) or lost one (08…).
 */
export const isAway = (error: unknown): boolean =>
  saidBy(error).some((said) =>
    /\b(ECONNREFUSED|ECONNRESET|EPIPE|57P0[123]|53300|08(000|001|003|004|006)|P1001|P1017)\b|Connection terminated|[Cc]onnection timeout|timeout exceeded when trying to connect|DatabaseNotReachable|ConnectionClosed/.test(
      said,
    ),
  )
