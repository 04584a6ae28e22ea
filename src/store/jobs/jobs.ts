import { randomUUID } from 'node:crypto'
import type { PrismaClient } from '../generated/client.ts'
import type { JobUpdateManyMutationInput } from '../generated/models/Job.ts'
import { eventOf, storedOf, summaryOf } from './rows.ts'
import {
  type JobEnd,
  type JobEvent,
  type JobFailure,
  type JobStore,
  type JobSummary,
  jobDays,
  mostKeptJobs,
  type StoredJob,
} from './types.ts'

type Client = Pick<PrismaClient, 'job' | 'jobEvent'>

interface NewJob {
  kind: string
  name: string | null
  request: unknown
}

const unended = { in: ['waiting', 'running'] }

/** The jobs of one workspace: its id stands in every query because it is fixed here. */
export class DatabaseJobs implements JobStore {
  readonly #client: PrismaClient
  readonly #workspaceId: string
  readonly #now: () => Date

  constructor(client: PrismaClient, workspaceId: string, now: () => Date) {
    this.#client = client
    this.#workspaceId = workspaceId
    this.#now = now
  }

  add(job: NewJob): Promise<JobSummary>
  add(job: NewJob, most: number): Promise<JobSummary | null>
  add({ kind, name, request }: NewJob, most = Number.POSITIVE_INFINITY): Promise<JobSummary | null> {
    const workspaceId = this.#workspaceId
    return this.#client.$transaction(async (transaction) => {
      if (most < Number.POSITIVE_INFINITY) {
        if ((await transaction.job.count({ where: { workspaceId, state: unended } })) >= most) return null
      }
      await this.#trim(transaction)
      const at = this.#now()
      const row = { workspaceId, id: randomUUID(), kind, name, state: 'waiting', askedAt: at }
      const made = await transaction.job.create({ data: { ...row, request: JSON.stringify(request) } })
      await transaction.jobEvent.create({ data: { workspaceId, job: row.id, sequence: 1, kind: 'asked', at } })
      return summaryOf(made)
    })
  }

  async get(id: string): Promise<StoredJob | null> {
    const row = await this.#client.job.findUnique({ where: this.#key(id) })
    return row && storedOf(row)
  }

  async list(): Promise<JobSummary[]> {
    const rows = await this.#client.job.findMany({
      where: { workspaceId: this.#workspaceId },
      orderBy: [{ askedAt: 'desc' }, { id: 'asc' }],
      omit: { request: true, result: true },
    })
    return rows.map(summaryOf)
  }

  start(id: string): Promise<JobEvent | null> {
    return this.#change(id, 'started', (at) => ({ state: 'running', startedAt: at }))
  }

  async wait(id: string): Promise<void> {
    const where = { workspaceId: this.#workspaceId, id, state: unended }
    await this.#client.job.updateMany({ where, data: { state: 'waiting', startedAt: null } })
  }

  replaced(id: string): Promise<JobEvent | null> {
    return this.#change(id, 'threadReplaced', () => ({ replaced: { increment: 1 } }))
  }

  end(id: string, { state, done, total, failure, result }: JobEnd): Promise<JobEvent | null> {
    return this.#change(id, 'ended', (at) => ({
      state,
      done,
      total,
      endedAt: at,
      failure: failure ? JSON.stringify(failure) : null,
      result: result === undefined ? null : JSON.stringify(result),
    }))
  }

  async interrupt(failure: JobFailure): Promise<number> {
    const where = { workspaceId: this.#workspaceId, state: unended }
    const left = await this.#client.job.findMany({ where, select: { id: true, done: true, total: true } })
    for (const { id, done, total } of left) await this.end(id, { state: 'interrupted', done, total, failure })
    return left.length
  }

  events(id: string, after: number): Promise<JobEvent[] | null> {
    return this.#client.$transaction(async (transaction) => {
      if ((await transaction.job.count({ where: { workspaceId: this.#workspaceId, id } })) === 0) return null
      const where = { workspaceId: this.#workspaceId, job: id, sequence: { gt: after } }
      return (await transaction.jobEvent.findMany({ where, orderBy: { sequence: 'asc' } })).map(eventOf)
    })
  }

  async remove(id: string): Promise<boolean> {
    const { count } = await this.#client.job.deleteMany({ where: { workspaceId: this.#workspaceId, id } })
    return count > 0
  }

  /** A job that has ended is changed no more: whoever comes second changes nothing. */
  #change(
    id: string,
    kind: JobEvent['kind'],
    change: (at: Date) => JobUpdateManyMutationInput,
  ): Promise<JobEvent | null> {
    const workspaceId = this.#workspaceId
    const at = this.#now()
    return this.#client.$transaction(async (transaction) => {
      const { count } = await transaction.job.updateMany({
        where: { workspaceId, id, state: unended },
        data: change(at),
      })
      if (count === 0) return null
      const before = await transaction.jobEvent.count({ where: { workspaceId, job: id } })
      const event = { workspaceId, job: id, sequence: before + 1, kind, at }
      return eventOf(await transaction.jobEvent.create({ data: event }))
    })
  }

  async #trim(client: Client): Promise<void> {
    const ended = { workspaceId: this.#workspaceId, state: { notIn: unended.in } }
    const oldest = new Date(this.#now().getTime() - jobDays * 86_400_000)
    await client.job.deleteMany({ where: { ...ended, endedAt: { lt: oldest } } })
    const beyond = await client.job.findMany({
      where: ended,
      orderBy: [{ endedAt: 'desc' }, { id: 'asc' }],
      skip: mostKeptJobs - 1,
      select: { id: true },
    })
    const ids = beyond.map(({ id }) => id)
    if (ids.length > 0) await client.job.deleteMany({ where: { workspaceId: this.#workspaceId, id: { in: ids } } })
  }

  #key(id: string) {
    return { workspaceId_id: { workspaceId: this.#workspaceId, id } }
  }
}
