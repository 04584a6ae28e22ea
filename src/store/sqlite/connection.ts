import type { IsolationLevel, SqlDriverAdapter, SqlQuery, Transaction } from '@prisma/driver-adapter-utils'
import type { Lock } from '../lock.ts'

/** Whose turn it is. */
interface Turns {
  /** On this connection. */
  own: Lock
  /** To write, of all connections to the file. */
  writing: Lock
}

/** What surely only reads: in WAL mode it need not wait while another connection writes, and sees what is committed. */
const reads = /^\s*SELECT\b/i

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
  readonly #turns: Turns

  constructor(inner: SqlDriverAdapter, turns: Turns) {
    this.#inner = inner
    this.#turns = turns
    this.adapterName = inner.adapterName
  }

  queryRaw(query: SqlQuery) {
    const ask = () => this.#inner.queryRaw(query)
    return reads.test(query.sql) ? this.#turns.own.hold(ask) : this.#alone(ask)
  }

  executeRaw(query: SqlQuery) {
    return this.#alone(() => this.#inner.executeRaw(query))
  }

  executeScript(script: string) {
    return this.#alone(async () => this.#inner.executeScript(script))
  }

  async startTransaction(isolationLevel?: IsolationLevel): Promise<Transaction> {
    const release = await this.#acquire()
    try {
      return releasing(await this.#inner.startTransaction(isolationLevel), release)
    } catch (error) {
      release()
      throw error
    }
  }

  dispose() {
    return this.#alone(() => this.#inner.dispose())
  }

  #alone<Result>(work: () => Promise<Result>): Promise<Result> {
    const { own, writing } = this.#turns
    return writing.hold(() => own.hold(work))
  }

  /** Always in this order, so that nobody who waits to write keeps others from reading, or waits for one who waits for them. */
  async #acquire(): Promise<() => void> {
    const { own, writing } = this.#turns
    const [endWriting, end] = [await writing.acquire(), await own.acquire()]
    return () => {
      end()
      endWriting()
    }
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
