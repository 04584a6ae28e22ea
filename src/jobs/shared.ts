import type { JobQueue, JobStore, JobSummary, QueuedJob, Signals } from '../store/types.ts'
import { JobNewsBoard } from './news.ts'
import { type Running, runJob } from './run.ts'
import { type ExplainFailure, type JobLimits, type Jobs, TooManyJobs, type Works } from './types.ts'

/** So often (ms) jobs are looked for whose process is no more. */
const sweepEvery = 1_000

export interface SharedOf {
  queue: JobQueue
  signals: Signals
  jobsOf(workspace: string): JobStore
  works: Works
  limits: JobLimits
  explain: ExplainFailure
  log(error: unknown): void
}

const topic = 'queue'

const endedTooOften = {
  code: 'internal',
  message:
    'Servers ended while they computed this job, so often that none takes it any more; it asks for too much at once',
}

/**
 * Jobs of all workspaces of one database, computed by whichever of its processes has threads free. What is said of a job stands in the
 * database, so that any process can tell of it; a job whose process ended is begun anew by another one.
 */
export class SharedJobs {
  readonly #of: SharedOf
  readonly #news: JobNewsBoard
  readonly #running = new Map<string, Running>()
  readonly #timer: NodeJS.Timeout
  readonly #deaf: (() => void)[]
  #filling: Promise<void> | null = null
  #moreCame = false
  #sweeping: Promise<void> = Promise.resolve()
  #closing = false

  constructor(of: SharedOf) {
    this.#of = of
    this.#news = new JobNewsBoard(of.signals, of.log)
    this.#deaf = [
      of.signals.hear(topic, () => void this.#fill()),
      this.#news.ended((id) => this.#running.get(id)?.controller.abort()),
    ]
    of.queue.lost(() => {
      for (const running of this.#running.values()) {
        running.lost = true
        running.controller.abort()
      }
    })
    this.#timer = setInterval(() => this.#sweep(), sweepEvery)
    this.#sweep()
  }

  /** The jobs of one workspace. */
  of(workspace: string): Jobs {
    const store = this.#of.jobsOf(workspace)
    return {
      start: (asked) => this.#start(workspace, asked),
      get: async (id) => {
        const stored = await store.get(id)
        return stored && { ...stored, ...this.#news.progressOf(stored) }
      },
      list: async () => (await store.list()).map((job) => ({ ...job, ...this.#news.progressOf(job) })),
      cancel: (id) => this.#cancel(store, id),
      remove: async (id) => (await this.#cancel(store, id)) !== null && store.remove(id),
      follow: (id, after, tell) => this.#news.follow(store, { id, after }, tell),
      close: () => this.close(),
    }
  }

  /** What runs here is left to other processes, or to the next one. */
  async close(): Promise<void> {
    if (this.#closing) return
    this.#closing = true
    clearInterval(this.#timer)
    for (const deaf of this.#deaf) deaf()
    for (const { controller } of this.#running.values()) controller.abort()
    await this.#sweeping
    // What is being taken at this moment is given back too.
    await this.#filling
    await Promise.all([...this.#running.values()].map(({ over }) => over))
    this.#news.close()
    await this.#of.queue.close()
  }

  async #start(workspace: string, asked: { kind: string; name: string | null; request: unknown }): Promise<JobSummary> {
    const { queue, signals, limits, jobsOf } = this.#of
    const summary = this.#closing ? null : await jobsOf(workspace).add(asked, limits.running + limits.waiting)
    if (!summary) throw new TooManyJobs(limits)
    await queue.put({ workspace, id: summary.id })
    signals.send(topic, '').catch(this.#of.log)
    return summary
  }

  async #cancel(store: JobStore, id: string): Promise<JobSummary | null> {
    const job = await store.get(id)
    if (!job) return null
    if (job.endedAt === null) {
      const { done, total } = this.#news.progressOf(job)
      await store.end(id, { state: 'cancelled', done, total })
      await this.#news.tell(id, true)
    }
    const ended = await store.get(id)
    if (!ended) return null
    const { request: _, result: __, ...summary } = ended
    return summary
  }

  /** Takes jobs as long as there are any and threads are free. */
  #fill(): Promise<void> {
    this.#moreCame = true
    this.#filling ??= this.#takeAll().finally(() => {
      this.#filling = null
      if (this.#moreCame) void this.#fill()
    })
    return this.#filling
  }

  async #takeAll(): Promise<void> {
    try {
      while (this.#moreCame) {
        this.#moreCame = false
        while (!this.#closing && this.#running.size < this.#of.limits.running) {
          const job = await this.#of.queue.take()
          if (!job) break
          this.#run(job)
        }
      }
    } catch (error) {
      this.#of.log(error)
    }
  }

  #run(job: QueuedJob): void {
    const running: Running = { controller: new AbortController(), lost: false, over: Promise.resolve() }
    if (this.#closing) running.controller.abort()
    this.#running.set(job.id, running)
    running.over = runJob(job, running, { ...this.#of, news: this.#news, closing: () => this.#closing })
      .catch(this.#of.log)
      .then(() => {
        this.#running.delete(job.id)
        if (!this.#closing) void this.#fill()
      })
  }

  #sweep(): void {
    this.#sweeping = this.#sweeping.then(() => this.#sweepOnce()).catch(this.#of.log)
  }

  async #sweepOnce(): Promise<void> {
    if (this.#closing) return
    for (const { workspace, id } of await this.#of.queue.sweep()) {
      await this.#of.jobsOf(workspace).end(id, { state: 'failed', done: 0, total: null, failure: endedTooOften })
      await this.#news.tell(id, true)
    }
    void this.#fill()
  }
}
