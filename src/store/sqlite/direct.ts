import Database from 'better-sqlite3'
import { StoreError } from '../errors.ts'
import type { Lock } from '../lock.ts'
import { settings, settingsScript } from './pragmas.ts'

export type Direct = Database.Database

/** Where a connection leads to. */
export interface DirectTo {
  file: string
  /** SQL that the connection begins with besides its settings. */
  further: string
}

// What several thousand rows touch has room in memory, so that no page is written twice in one commit. And the log has room for the
// rows of several events (256 MB; twenty thousand rows at once take 60), so that nobody waits while they are moved to their place: that is
// done when it is quiet (`intakeThread.ts`).
const room = 'PRAGMA cache_size = -32000; PRAGMA wal_autocheckpoint = 64000;'

/** Opens a connection past the client. Throws a StoreError where the database does not accept its settings. */
export function openDirect({ file, further }: DirectTo): Direct {
  const database = new Database(file, { fileMustExist: true })
  database.exec(settingsScript + room + further)
  for (const { name, set, reads } of settings) {
    const found = String(database.pragma(name, { simple: true }))
    if (found === reads) continue
    database.close()
    throw new StoreError(`The database does not accept ${name} = ${set} (it says ${found})`)
  }
  return database
}

/**
 * A connection beside the client's, for the one place where thousands of rows come in at once: there, what the client does
 * between a query and the engine costs several times the insertion. It takes turns with whatever else writes.
 */
export class DirectConnection {
  readonly to: DirectTo
  readonly #writing: Lock
  #database: Direct | undefined
  #closed = false

  constructor(to: DirectTo, writing: Lock) {
    this.to = to
    this.#writing = writing
  }

  /** All that `work` does in one commit that is synced to disk before this resolves, or nothing of it. */
  together<Result>(work: (database: Direct) => Result): Promise<Result> {
    return this.turn(async () => {
      const database = this.#opened()
      return database.transaction(() => work(database)).immediate()
    })
  }

  /** Nothing else writes while `work` goes on, as by a connection in a thread. */
  turn<Result>(work: () => Promise<Result>): Promise<Result> {
    return this.#writing.hold(() => {
      if (this.#closed) throw new StoreError('The database is closed')
      return work()
    })
  }

  /** As soon as somebody needs it, so that a program that takes nothing in opens nothing. */
  #opened(): Direct {
    this.#database ??= openDirect(this.to)
    return this.#database
  }

  close(): void {
    this.#closed = true
    this.#database?.close()
    this.#database = undefined
  }
}
