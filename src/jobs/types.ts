import type { JobEvent, JobFailure, JobSummary, StoredJob } from '../store/types.ts'

/** What a running computation is given. */
export interface Run {
  /** Ends it: its threads stop at once. */
  signal: AbortSignal
  /** How far it is. */
  progress(done: number, total: number): void
  /** A thread died over a part and was replaced; the part is done again. */
  replaced(): void
}

/** The computations that there are, by their kind. The request has been checked. */
export type Works = { readonly [kind: string]: (request: unknown, run: Run) => Promise<unknown> }

/** What whoever follows a job is told: what happened, which is kept, and how far it is, which is not. */
export type JobNews = { event: JobEvent; job: JobSummary } | { progress: { done: number; total: number | null } }

export interface JobLimits {
  /** Jobs that compute at once, and that wait for their turn. */
  running: number
  waiting: number
}

/** Too many run and wait already. */
export class TooManyJobs extends Error {
  readonly limits: JobLimits
  constructor(limits: JobLimits) {
    super(`${limits.running} jobs run and ${limits.waiting} wait`)
    this.name = 'TooManyJobs'
    this.limits = limits
  }
}

/** Jobs of a workspace, whoever computes them. Null and false: there is no such job. */
export interface Jobs {
  /** Throws TooManyJobs. */
  start(asked: { kind: string; name: string | null; request: unknown }): Promise<JobSummary>
  get(id: string): Promise<StoredJob | null>
  /** Newest first. */
  list(): Promise<JobSummary[]>
  /** Ends a job that waits or runs; one that has ended stays as it is. */
  cancel(id: string): Promise<JobSummary | null>
  /** Takes it away for good, with its result; cancelled first where it is not over. */
  remove(id: string): Promise<boolean>
  /**
   * Tells of everything after the event with this number, then of all that happens. The function that it answers ends that.
   * Events come in their order, each once.
   */
  follow(id: string, after: number, tell: (news: JobNews) => void): Promise<(() => void) | null>
  /** Ends what runs, which is then said to be interrupted. */
  close(): Promise<void>
}

export type ExplainFailure = (error: unknown) => JobFailure
