import type { JobEnd, JobEvent, JobFailure, JobStore, JobSummary } from '../store/types.ts'
import { type ExplainFailure, type JobLimits, type JobNews, type Jobs, TooManyJobs, type Works } from './types.ts'

/** A job that waits or runs. */
interface Live {
  readonly id: string
  readonly kind: string
  readonly request: unknown
  readonly controller: AbortController
  readonly followers: Set<(news: JobNews) => void>
  summary: JobSummary
  /** Changes are written and told one after the other. */
  last: Promise<void>
  ended: Promise<void>
  end(): void
}

const interrupted: JobFailure = {
  code: 'interrupted',
  message: 'The server stopped before this job was over, and nothing of it was kept; start it again',
}

const notKept: JobFailure = { code: 'internal', message: 'What became of this job could not be written down' }

/**
 * Jobs that this process computes by its own threads. Whoever starts one is answered when it is written down; jobs that the
 * last process left behind are said to be interrupted before the first one starts.
 */
export class InProcessJobs implements Jobs {
  readonly #store: JobStore
  readonly #works: Works
  readonly #limits: JobLimits
  readonly #explain: ExplainFailure
  readonly #live = new Map<string, Live>()
  readonly #waiting: Live[] = []
  #running = 0
  /** Jobs that are being written down. */
  #coming = 0
  #closing = false

  constructor(of: { store: JobStore; works: Works; limits: JobLimits; explain: ExplainFailure }) {
    this.#store = of.store
    this.#works = of.works
    this.#limits = of.limits
    this.#explain = of.explain
  }

  /** Before the first job: those of a process that is gone end here. */
  recover(): Promise<number> {
    return this.#store.interrupt(interrupted)
  }

  async start(asked: { kind: string; name: string | null; request: unknown }): Promise<JobSummary> {
    const { running, waiting } = this.#limits
    if (this.#closing || this.#live.size + this.#coming >= running + waiting) throw new TooManyJobs(this.#limits)
    this.#coming++
    let summary: JobSummary
    try {
      summary = await this.#store.add(asked)
    } finally {
      this.#coming--
    }
    const live = liveOf(summary, asked.request)
    this.#live.set(live.id, live)
    this.#waiting.push(live)
    this.#next()
    return live.summary
  }

  async get(id: string) {
    const stored = await this.#store.get(id)
    return stored && { ...stored, ...this.#progressOf(id, stored) }
  }

  async list() {
    return (await this.#store.list()).map((job) => ({ ...job, ...this.#progressOf(job.id, job) }))
  }

  async cancel(id: string): Promise<JobSummary | null> {
    const live = this.#live.get(id)
    if (live) {
      live.controller.abort()
      const place = this.#waiting.indexOf(live)
      if (place >= 0) {
        this.#waiting.splice(place, 1)
        this.#end(live, { state: 'cancelled' })
      }
      await live.ended
      return live.summary
    }
    const stored = await this.#store.get(id)
    if (!stored) return null
    const { request: _, result: __, ...summary } = stored
    if (summary.endedAt !== null) return summary
    await this.#store.end(id, { state: 'cancelled', done: summary.done, total: summary.total })
    return { ...summary, state: 'cancelled' }
  }

  async remove(id: string): Promise<boolean> {
    await this.cancel(id)
    return this.#store.remove(id)
  }

  async follow(id: string, after: number, tell: (news: JobNews) => void): Promise<(() => void) | null> {
    const live = this.#live.get(id)
    const early: JobNews[] = []
    let told = after
    let behind = true
    const pass = (news: JobNews) => {
      if ('event' in news) {
        if (news.event.sequence <= told) return
        told = news.event.sequence
      }
      tell(news)
    }
    const hear = (news: JobNews) => (behind ? early.push(news) : pass(news))
    live?.followers.add(hear)
    const [missed, job] = [await this.#store.events(id, after), await this.get(id)]
    if (missed === null || job === null) {
      live?.followers.delete(hear)
      return null
    }
    const { request: _, result: __, ...summary } = job
    for (const event of missed) pass({ event, job: summary })
    for (const news of early) pass(news)
    behind = false
    if (this.#live.has(id)) tell({ progress: { done: job.done, total: job.total } })
    return () => live?.followers.delete(hear)
  }

  async close(): Promise<void> {
    this.#closing = true
    const all = [...this.#live.values()]
    for (const live of this.#waiting.splice(0)) this.#end(live, { state: 'interrupted', failure: interrupted })
    for (const { controller } of all) controller.abort()
    await Promise.all(all.map(({ ended }) => ended))
  }

  #progressOf(id: string, { done, total }: JobSummary) {
    const live = this.#live.get(id)
    return live ? { done: live.summary.done, total: live.summary.total } : { done, total }
  }

  #next(): void {
    while (this.#running < this.#limits.running) {
      const live = this.#waiting.shift()
      if (!live) return
      this.#running++
      void this.#run(live).then((end) => {
        this.#running--
        this.#end(live, end)
        this.#next()
      })
    }
  }

  async #run(live: Live): Promise<Omit<JobEnd, 'done' | 'total'>> {
    this.#write(live, () => this.#store.start(live.id), { state: 'running' })
    const { signal } = live.controller
    try {
      const work = this.#works[live.kind]
      if (!work) throw new Error(`no job of the kind ${live.kind}`)
      const result = await work(live.request, {
        signal,
        progress: (done, total) => {
          live.summary = { ...live.summary, done, total }
          for (const tell of live.followers) tell({ progress: { done, total } })
        },
        replaced: () => this.#write(live, () => this.#store.replaced(live.id), { replaced: live.summary.replaced + 1 }),
      })
      return { state: 'done', result }
    } catch (error) {
      if (!signal.aborted) return { state: 'failed', failure: this.#explain(error) }
      return this.#closing ? { state: 'interrupted', failure: interrupted } : { state: 'cancelled' }
    }
  }

  #end(live: Live, end: Omit<JobEnd, 'done' | 'total'>): void {
    const { done, total } = live.summary
    const { result: _, ...shown } = end
    this.#write(live, () => this.#store.end(live.id, { ...end, done, total }), {
      ...shown,
      failure: end.failure ?? null,
    })
    void live.last.then(() => {
      this.#live.delete(live.id)
      live.end()
    })
  }

  /** Writes a change down, and then tells of it. */
  #write(live: Live, write: () => Promise<JobEvent | null>, change: Partial<JobSummary>): void {
    live.last = live.last.then(async () => {
      try {
        const event = await write()
        if (!event) return
        const { at, kind } = event
        const when = kind === 'started' ? { startedAt: at } : kind === 'ended' ? { endedAt: at } : {}
        live.summary = { ...live.summary, ...change, ...when }
        for (const tell of live.followers) tell({ event, job: live.summary })
      } catch (error) {
        // The row says that it runs, until it is cancelled or removed, or the server starts anew.
        this.#explain(error)
        live.summary = { ...live.summary, ...change, failure: notKept }
      }
    })
  }
}

function liveOf(summary: JobSummary, request: unknown): Live {
  let end = () => {}
  const ended = new Promise<void>((resolve) => {
    end = resolve
  })
  const { id, kind } = summary
  const live = { id, kind, request, summary, ended, end, followers: new Set<(news: JobNews) => void>() }
  return { ...live, controller: new AbortController(), last: Promise.resolve() }
}
