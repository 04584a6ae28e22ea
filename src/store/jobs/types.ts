/** So many ended jobs are kept in a workspace, each for so many days; the oldest go first. */
export const mostKeptJobs = 50
export const jobDays = 30

/** `interrupted`: the server stopped while it waited or ran. */
export const jobStates = ['waiting', 'running', 'done', 'failed', 'cancelled', 'interrupted'] as const
export type JobState = (typeof jobStates)[number]

export const jobEvents = ['asked', 'started', 'threadReplaced', 'ended'] as const

/** What happened to a job. */
export interface JobEvent {
  /** Counted from 1 within the job, without gaps. */
  sequence: number
  kind: (typeof jobEvents)[number]
  /** ISO 8601. */
  at: string
}

/** Why a job has no result, in words. */
export interface JobFailure {
  code: string
  message: string
  path?: readonly (string | number)[] | undefined
}

export interface JobSummary {
  id: string
  kind: string
  /** What whoever asked calls it. */
  name: string | null
  state: JobState
  /** ISO 8601. */
  askedAt: string
  startedAt: string | null
  endedAt: string | null
  done: number
  /** Null while it is not known yet. */
  total: number | null
  /** Threads that died over it and were replaced. */
  replaced: number
  failure: JobFailure | null
}

export interface StoredJob extends JobSummary {
  request: unknown
  /** Null unless it is done. */
  result: unknown
}

/** How a job ended. */
export interface JobEnd {
  state: Exclude<JobState, 'waiting' | 'running'>
  done: number
  total: number | null
  failure?: JobFailure
  result?: unknown
}

/** The jobs of one workspace. What changes a job appends the event that says so, in the same transaction. */
export interface JobStore {
  /** Clears away what is no longer kept. @param most null is answered where as many wait or run already */
  add(job: { kind: string; name: string | null; request: unknown }): Promise<JobSummary>
  add(job: { kind: string; name: string | null; request: unknown }, most: number): Promise<JobSummary | null>
  get(id: string): Promise<StoredJob | null>
  /** Newest first. */
  list(): Promise<JobSummary[]>
  /** Null where there is none: it was removed. */
  start(id: string): Promise<JobEvent | null>
  replaced(id: string): Promise<JobEvent | null>
  /** It waits again, because whoever computed it stops; it begins anew. */
  wait(id: string): Promise<void>
  end(id: string, how: JobEnd): Promise<JobEvent | null>
  /** Ends what a stopped server left waiting or running, with the same words for all; how many. */
  interrupt(failure: JobFailure): Promise<number>
  /** Events after the one with this number; null where there is no such job. */
  events(id: string, after: number): Promise<JobEvent[] | null>
  /** For good. False where there is no such job. */
  remove(id: string): Promise<boolean>
}
