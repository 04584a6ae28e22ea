import type { JobStore, JobSummary, Signals } from '../store/types.ts'
import type { JobNews } from './types.ts'

interface Progress {
  done: number
  total: number | null
}

const [changed, advanced] = ['job changed', 'job progress']

/** Progress of a job is told to the other processes at most so often (ms). */
const pause = 200

/**
 * What happens to jobs, told between processes. Events stand in the database and are read there by whoever follows a job; only how far
 * a job is stands nowhere else.
 */
export class JobNewsBoard {
  readonly #signals: Signals
  readonly #log: (error: unknown) => void
  /** Of jobs that run, here or elsewhere. */
  readonly #progress = new Map<string, Progress>()
  readonly #toldAt = new Map<string, number>()
  readonly #deaf: (() => void)[]

  constructor(signals: Signals, log: (error: unknown) => void) {
    this.#signals = signals
    this.#log = log
    this.#deaf = [
      signals.hear(advanced, (message) => {
        const { id, ...progress } = JSON.parse(message) as Progress & { id: string }
        this.#progress.set(id, progress)
      }),
      this.ended((id) => {
        this.#progress.delete(id)
        this.#toldAt.delete(id)
      }),
    ]
  }

  close(): void {
    for (const deaf of this.#deaf) deaf()
  }

  /** How far a job is, by the latest word. */
  progressOf({ id, done, total, endedAt }: JobSummary): Progress {
    return (endedAt === null ? this.#progress.get(id) : undefined) ?? { done, total }
  }

  progress(id: string, progress: Progress): void {
    this.#progress.set(id, progress)
    const now = performance.now()
    if (now - (this.#toldAt.get(id) ?? Number.NEGATIVE_INFINITY) < pause) return
    this.#toldAt.set(id, now)
    this.#signals.send(advanced, JSON.stringify({ id, ...progress })).catch(this.#log)
  }

  /** That something of it was written down. */
  async tell(id: string, ended: boolean): Promise<void> {
    await this.#signals.send(changed, JSON.stringify({ id, ended })).catch(this.#log)
  }

  /** Returns how to stop hearing of ends. */
  ended(heard: (id: string) => void): () => void {
    return this.#signals.hear(changed, (message) => {
      const { id, ended } = JSON.parse(message) as { id: string; ended: boolean }
      if (ended) heard(id)
    })
  }

  /** Null: there is no such job. */
  async follow(
    store: JobStore,
    { id, after }: { id: string; after: number },
    tell: (news: JobNews) => void,
  ): Promise<(() => void) | null> {
    let told = after
    let left = false
    let begun = false
    let turn: Promise<boolean> = Promise.resolve(true)
    const readOn = async (): Promise<boolean> => {
      const events = await store.events(id, told)
      const job = events && (await store.get(id))
      if (!events || !job) return false
      const { request: _, result: __, ...summary } = job
      const shown = { ...summary, ...this.progressOf(summary) }
      for (const event of events) {
        if (left) break
        told = event.sequence
        tell({ event, job: shown })
      }
      return true
    }
    const look = () => {
      turn = turn.then(readOn).catch((error) => {
        this.#log(error)
        return true
      })
      return turn
    }
    const about = (message: string) => (JSON.parse(message) as { id: string }).id === id
    const deaf = [
      this.#signals.hear(changed, (message) => void (about(message) && look())),
      this.#signals.hear(advanced, (message) => {
        if (begun && about(message)) tell({ progress: this.#progress.get(id) ?? { done: 0, total: null } })
      }),
      this.#signals.missed(() => void look()),
    ]
    const leave = () => {
      left = true
      for (const stop of deaf) stop()
    }
    if (!(await look())) {
      leave()
      return null
    }
    begun = true
    const progress = this.#progress.get(id)
    if (progress) tell({ progress })
    return leave
  }
}
