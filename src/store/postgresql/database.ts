import { join } from 'node:path'
import { projectRoot } from '../../root.ts'
import type { Database } from '../database.ts'
import { StoreError } from '../errors.ts'
import { Lock } from '../lock.ts'
import type { OpenOptions } from '../open.ts'
import { clientOn, inTurn } from './client.ts'
import { durabilityOf, lastingClient, poolAt, shown } from './connection.ts'
import { takeInOn } from './intake.ts'
import { migratePostgresql } from './migrate.ts'
import { PostgresqlQueue } from './queue.ts'
import { SharedSignals } from './signals.ts'
import { keyOf } from './turns.ts'

export const ownMigrations = () => join(projectRoot(), 'prisma', 'postgresql', 'migrations')

/** A database of a PostgreSQL server, which several processes may use at once. */
export async function openPostgresql(url: string, options: OpenOptions & { now: () => Date }): Promise<Database> {
  const { now, migrations = ownMigrations(), copyBefore = true } = options
  const pool = await poolAt(url)
  try {
    // Of several processes that start together one changes the tables, and the others find them changed.
    const migrated = await alone(url, 'migration', () => migratePostgresql({ url, pool, migrations, now, copyBefore }))
    options.migrated?.(migrated)
    const signals = await SharedSignals.open(url, pool)
    const client = clientOn(pool)
    const locks = new Map<string, Lock>()
    const lockOf = (name: string): Lock => {
      const lock = locks.get(name) ?? new Lock()
      locks.set(name, lock)
      return lock
    }
    let closed = false
    const takeIn = takeInOn(pool)
    return {
      engine: 'postgresql',
      client,
      inTurn: (name) => inTurn(client, name, lockOf(name)),
      takeIn: async (together) => {
        if (closed) throw new StoreError('The database is closed')
        return takeIn(together)
      },
      signals,
      shared: true,
      backups: null,
      queue: () => alone(url, 'queue', () => PostgresqlQueue.open(url, pool)),
      alone: (name, work) => alone(url, name, work),
      health: async () => {
        const { synchronousCommit, fsync } = await durabilityOf(pool)
        return {
          engine: 'postgresql',
          journalMode: 'wal',
          synchronous: `synchronous_commit ${synchronousCommit}, fsync ${fsync}`,
        }
      },
      answers: async () => void (await pool.query('SELECT 1')),
      close: async () => {
        if (closed) return
        closed = true
        await signals.close()
        await client.$disconnect()
        await pool.end()
      },
    }
  } catch (error) {
    await pool.end()
    throw error
  }
}

/** Holds a lock by a connection of its own, so that it is free again when this process is no more. */
async function alone<Result>(url: string, name: string, work: () => Promise<Result>): Promise<Result> {
  const client = lastingClient(url)
  let broken: Error | undefined
  client.on('error', (error) => {
    broken = error
  })
  await client.connect()
  try {
    await client.query('SELECT pg_advisory_lock(hashtextextended($1, 0))', [keyOf(name)])
    const result = await work()
    if (broken) throw new StoreError(`The connection to ${shown(url)} broke: ${broken.message}`, broken)
    return result
  } finally {
    await client.end().catch(() => {})
  }
}
