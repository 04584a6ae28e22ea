import type { Client, Pool } from 'pg'
import PgBoss from 'pg-boss'
import { type JobQueue, mostBeginnings, type QueuedJob } from '../jobs/queue.ts'
import { lastingClient } from './connection.ts'
import { keyOf } from './turns.ts'

const name = 'jobs'

/** Longer than any computation; that a process is no more is told by its locks, not by time (s). */
const expireInSeconds = 20 * 3600

/** So long a process may take from a job to its lock (s). */
const patience = 1

const lockOf = (id: string): string => keyOf(`job ${id}`)

/**
 * Jobs in pg-boss, which hands each to one process. That this process lives is shown by a connection that holds a lock for each job it has: the
 * database takes the lock back as soon as the process is gone, however that came.
 */
export class PostgresqlQueue implements JobQueue {
  readonly #url: string
  readonly #pool: Pool
  readonly #boss: PgBoss
  readonly #own = new Set<string>()
  readonly #told: (() => void)[] = []
  #holder: Promise<Client> | undefined

  private constructor(url: string, pool: Pool, boss: PgBoss) {
    this.#url = url
    this.#pool = pool
    this.#boss = boss
  }

  /** Only one process may do so at a time: it makes the queue's tables. */
  static async open(url: string, pool: Pool): Promise<PostgresqlQueue> {
    const db = { executeSql: (text: string, values: unknown[]) => pool.query(text, values) }
    const boss = new PgBoss({ db, schedule: false })
    // A connection that breaks is tried again at its next use.
    boss.on('error', () => {})
    await boss.start()
    await boss.createQueue(name, { name, retryLimit: mostBeginnings - 1, retryDelay: 0, expireInSeconds })
    return new PostgresqlQueue(url, pool, boss)
  }

  async put({ workspace, id }: QueuedJob): Promise<void> {
    await this.#boss.send(name, { workspace }, { id })
  }

  async take(): Promise<QueuedJob | null> {
    for (;;) {
      const [job] = await this.#boss.fetch<{ workspace: string }>(name)
      if (!job) return null
      if (await this.#lock(job.id)) return { workspace: job.data.workspace, id: job.id }
      // Somebody has it still who was taken for dead: that one writes down what becomes of it.
    }
  }

  async done(id: string): Promise<void> {
    await this.#boss.complete(name, id)
  }

  async giveBack(id: string): Promise<void> {
    await this.#boss.fail(name, id)
  }

  async letGo(id: string): Promise<void> {
    if (!this.#own.delete(id)) return
    const holder = await this.#holding()
    await holder.query('SELECT pg_advisory_unlock(hashtextextended($1, 0))', [lockOf(id)])
  }

  async sweep(): Promise<QueuedJob[]> {
    const { rows: left } = await this.#pool.query<QueuedJob>(
      `SELECT "workspaceId" AS "workspace", "id" FROM "Job" WHERE "state" = 'waiting'
        AND NOT EXISTS (SELECT 1 FROM pgboss.job WHERE name = $1 AND pgboss.job.id::text = "Job"."id")`,
      [name],
    )
    for (const job of left) await this.put(job)
    const { rows: taken } = await this.#pool.query<{ id: string }>(
      `SELECT id::text AS "id" FROM pgboss.job
        WHERE name = $1 AND state = 'active' AND started_on < now() - make_interval(secs => $2)`,
      [name, patience],
    )
    for (const { id } of taken) if (!this.#own.has(id)) await this.#giveBackAbandoned(id)
    const { rows: over } = await this.#pool.query<QueuedJob>(
      `SELECT "workspaceId" AS "workspace", "Job"."id" FROM "Job" JOIN pgboss.job ON pgboss.job.id::text = "Job"."id"
        WHERE pgboss.job.name = $1 AND pgboss.job.state = 'failed' AND "Job"."state" IN ('waiting', 'running')`,
      [name],
    )
    return over
  }

  lost(told: () => void): void {
    this.#told.push(told)
  }

  async close(): Promise<void> {
    await this.#boss.stop({ graceful: false, wait: true })
    const holder = await this.#holder?.catch(() => undefined)
    await holder?.end().catch(() => {})
  }

  /** Whether it is this process's own from now on. */
  async #lock(id: string): Promise<boolean> {
    const holder = await this.#holding()
    const { rows } = await holder.query<{ mine: boolean }>(
      'SELECT pg_try_advisory_lock(hashtextextended($1, 0)) AS "mine"',
      [lockOf(id)],
    )
    if (rows[0]!.mine) this.#own.add(id)
    return rows[0]!.mine
  }

  /** Nothing happens where somebody has it. */
  async #giveBackAbandoned(id: string): Promise<void> {
    const client = await this.#pool.connect()
    try {
      await client.query('BEGIN')
      const { rows } = await client.query<{ free: boolean }>(
        'SELECT pg_try_advisory_xact_lock(hashtextextended($1, 0)) AS "free"',
        [lockOf(id)],
      )
      if (rows[0]!.free) await this.#boss.fail(name, id)
    } finally {
      await client.query('ROLLBACK').then(
        () => client.release(),
        () => client.release(true),
      )
    }
  }

  #holding(): Promise<Client> {
    this.#holder ??= this.#connect()
    return this.#holder
  }

  async #connect(): Promise<Client> {
    const client = lastingClient(this.#url)
    client.on('error', () => {})
    try {
      await client.connect()
    } catch (error) {
      this.#holder = undefined
      throw error
    }
    client.once('end', () => {
      this.#holder = undefined
      this.#own.clear()
      for (const told of this.#told) told()
    })
    return client
  }
}
