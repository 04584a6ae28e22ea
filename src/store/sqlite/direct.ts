import Database from 'better-sqlite3'
import { StoreError } from '../errors.ts'
import type { Lock } from '../lock.ts'
import { settings, settingsScript } from './pragmas.ts'

export type Direct = Database.Database

/**
 * A connection beside the client's, for the one place where thousands of rows come in at once: there, what the client does
 * between a query and the engine costs several times the insertion. It shares the client's turn-taking, so neither ever finds the other
 * in a transaction.
 */
export class DirectConnection {
  readonly #lock: Lock
  readonly #file: string
  readonly #further: string
  #database: Direct | undefined
  #closed = false

  /** @param further SQL that the connection begins with besides its settings */
  constructor(file: string, lock: Lock, further: string) {
    this.#file = file
    this.#lock = lock
    this.#further = further
  }

  /** All that `work` does in one commit that is synced to disk before this resolves, or nothing of it. */
  together<Result>(work: (database: Direct) => Result): Promise<Result> {
    return this.#lock.hold(async () => {
      const database = this.#opened()
      return database.transaction(() => work(database)).immediate()
    })
  }

  /** As soon as somebody needs it, so that a program that takes nothing in opens nothing. */
  #opened(): Direct {
    if (this.#closed) throw new StoreError('The database is closed')
    if (this.#database !== undefined) return this.#database
    const database = new Database(this.#file, { fileMustExist: true })
    database.exec(settingsScript + this.#further)
    for (const { name, set, reads } of settings) {
      const found = String(database.pragma(name, { simple: true }))
      if (found === reads) continue
      database.close()
      throw new StoreError(`The database does not accept ${name} = ${set} (it says ${found})`)
    }
    this.#database = database
    return database
  }

  close(): void {
    this.#closed = true
    this.#database?.close()
    this.#database = undefined
  }
}
