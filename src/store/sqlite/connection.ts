import type { IsolationLevel, SqlDriverAdapter, SqlQuery, Transaction } from '@prisma/driver-adapter-utils'
import type { Lock } from '../lock.ts'

/**
 * A connection on which nothing runs inside a transaction but that transaction's own queries.
 *
 * The driver's adapter has one connection and locks it against a second transaction only. A plain query of another
 * request would join the open transaction: written, answered, and undone by the other's rollback. Here it waits.
 */
export class ExclusiveConnection implements SqlDriverAdapter {
  readonly provider = 'sqlite'
  readonly adapterName: string
  readonly #inner: SqlDriverAdapter
  readonly #lock: Lock

  /** @param lock whose turn it is, of all connections to the file */
  constructor(inner: SqlDriverAdapter, lock: Lock) {
    this.#inner = inner
    this.#lock = lock
    this.adapterName = inner.adapterName
  }

  queryRaw(query: SqlQuery) {
    return this.#lock.hold(() => this.#inner.queryRaw(query))
  }

  executeRaw(query: SqlQuery) {
    return this.#lock.hold(() => this.#inner.executeRaw(query))
  }

  executeScript(script: string) {
    return this.#lock.hold(async () => this.#inner.executeScript(script))
  }

  async startTransaction(isolationLevel?: IsolationLevel): Promise<Transaction> {
    const release = await this.#lock.acquire()
    try {
      return releasing(await this.#inner.startTransaction(isolationLevel), release)
    } catch (error) {
      release()
      throw error
    }
  }

  dispose() {
    return this.#lock.hold(() => this.#inner.dispose())
  }
}

/** The transaction, with `release` called when it has ended either way. */
function releasing(transaction: Transaction, release: () => void): Transaction {
  const { commit, rollback } = transaction
  transaction.commit = () => commit.call(transaction).finally(release)
  transaction.rollback = async () => {
    // After a COMMIT that failed, the client ends the transaction without a word to the database, which is still in it.
    await transaction.executeRaw({ sql: 'ROLLBACK', args: [], argTypes: [] }).catch(() => {})
    await rollback.call(transaction).finally(release)
  }
  return transaction
}
