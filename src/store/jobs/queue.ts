/** A job that is to be computed, by whichever process. */
export interface QueuedJob {
  workspace: string
  id: string
}

/** The jobs that processes share. What one has taken is its own until it says otherwise, or is no more. */
export interface JobQueue {
  /** Puts a job at the end; one that is there already stays where it is. */
  put(job: QueuedJob): Promise<void>
  /** The oldest that nobody has. Null: there is none. */
  take(): Promise<QueuedJob | null>
  /** It is over, and nobody takes it any more. */
  done(id: string): Promise<void>
  /** Another process may take it. */
  giveBack(id: string): Promise<void>
  /** It is no longer this process's own; where it is neither done nor given back it is found by `sweep`. */
  letGo(id: string): Promise<void>
  /**
   * Gives back what those had who are no more, and puts in what was written down without getting here. Returns the jobs that were
   * begun so often that nobody takes them any more, until they are written down as ended.
   */
  sweep(): Promise<QueuedJob[]>
  /** Told that what this process had may be another's by now. */
  lost(told: () => void): void
  close(): Promise<void>
}

/** A job is begun so often at most: one over which processes end is not to end them all. */
export const mostBeginnings = 4
