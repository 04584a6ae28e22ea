import { InProcessJobs, type JobLimits, type Jobs, SharedJobs } from '../../jobs/index.ts'
import type { Store } from '../../store/types.ts'
import type { Pool } from '../compute/pool.ts'
import { jobFailureOf } from '../errors.ts'
import { failureOf } from '../failures.ts'
import { worksOf } from './works.ts'

interface Of {
  store: Store
  pool: Pool
  limits: JobLimits
  log(error: unknown): void
}

/** The jobs of each workspace; all share the threads of one pool, and those of other processes where the database has several. */
export class JobsPerWorkspace {
  readonly #made = new Map<string, Promise<Jobs>>()
  readonly #of: Of
  readonly #shared: SharedJobs | null

  private constructor(of: Of, shared: SharedJobs | null) {
    this.#of = of
    this.#shared = shared
  }

  static async open(of: Of): Promise<JobsPerWorkspace> {
    const { store, pool, limits, log } = of
    if (store.queue === null) return new JobsPerWorkspace(of, null)
    const shared = new SharedJobs({
      queue: await store.queue(),
      signals: store.signals,
      jobsOf: (workspace) => store.workspace(workspace).jobs,
      works: worksOf(pool),
      limits,
      explain: explainTo(log),
      log,
    })
    return new JobsPerWorkspace(of, shared)
  }

  /** Made when they are first asked for. */
  get(workspaceId: string): Promise<Jobs> {
    const known = this.#made.get(workspaceId)
    if (known) return known
    const made = this.#shared ? Promise.resolve(this.#shared.of(workspaceId)) : this.#make(workspaceId)
    this.#made.set(workspaceId, made)
    return made
  }

  async close(): Promise<void> {
    if (this.#shared) return this.#shared.close()
    const all = await Promise.all(this.#made.values())
    await Promise.all(all.map((jobs) => jobs.close()))
  }

  /** With those that the last process left behind said to be interrupted. */
  async #make(workspaceId: string): Promise<Jobs> {
    const { store, pool, limits, log } = this.#of
    const jobs = new InProcessJobs({
      store: store.workspace(workspaceId).jobs,
      works: worksOf(pool),
      limits,
      explain: explainTo(log),
    })
    await jobs.recover()
    return jobs
  }
}

const explainTo = (log: (error: unknown) => void) => (error: unknown) => {
  const failure = failureOf(error)
  if (failure.code === 'internal') log(error)
  return jobFailureOf(failure)
}
