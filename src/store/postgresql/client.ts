import { PrismaPg } from '@prisma/adapter-pg'
import type { Pool } from 'pg'
import type { PrismaClient } from '../generated/client.ts'
import { Lock } from '../lock.ts'
import { PrismaClient as PostgresqlClient } from './generated/client.ts'
import { keyOf } from './turns.ts'

/** A transaction may wait for its turn behind those of other processes (ms). */
const transactionOptions = { maxWait: 30_000, timeout: 30_000 }

/** Both clients are made from the same models, so that what is written for the one holds for the other. */
export function clientOn(pool: Pool): PrismaClient {
  const adapter = new PrismaPg(pool, { onPoolError: () => {}, onConnectionError: () => {} })
  return new PostgresqlClient({ adapter, transactionOptions }) as unknown as PrismaClient
}

type Transaction = Parameters<PrismaClient['$transaction']>[0]

/**
 * The client with its transactions in turn: each begins by taking the lock of that name, which the database gives to one at a time and takes
 * back with the transaction's end, also where the process dies. Within a process they queue before they take a connection, so that those who wait
 * leave the connections to others.
 */
export function inTurn(client: PrismaClient, name: string, lock = new Lock()): PrismaClient {
  const key = keyOf(name)
  const transact = (work: Transaction, options?: { timeout?: number }) => {
    if (typeof work !== 'function') throw new Error('Only interactive transactions take turns')
    return lock.hold(() =>
      client.$transaction(async (transaction) => {
        await transaction.$executeRaw`SELECT pg_advisory_xact_lock(hashtextextended(${key}, 0))`
        return work(transaction)
      }, options),
    )
  }
  return new Proxy(client, {
    get: (target, property) => (property === '$transaction' ? transact : Reflect.get(target, property)),
  })
}
