import { InProcessJobs, type JobLimits } from '../../jobs/index.ts'
import type { Store } from '../../store/types.ts'
import type { Pool } from '../compute/pool.ts'
import { failureOf, jobFailureOf } from '../errors.ts'
import { worksOf } from './works.ts'

/** The jobs of each workspace; all share the threads of one pool. */
export class JobsPerWorkspace {
  readonly #made = new Map<string, Promise<InProcessJobs>>()
  readonly #of: { store: Store; pool: Pool; limits: JobLimits; log(error: unknown): void }

  constructor(of: { store: Store; pool: Pool; limits: JobLimits; log(error: unknown): void }) {
    this.#of = of
  }

  /** Made when they are first asked for, with those that the last process left behind said to be interrupted. */
  get(workspaceId: string): Promise<InProcessJobs> {
    const known = this.#made.get(workspaceId)
    if (known) return known
    const made = this.#make(workspaceId)
    this.#made.set(workspaceId, made)
    return made
  }

  async close(): Promise<void> {
    const all = await Promise.all(this.#made.values())
    await Promise.all(all.map((jobs) => jobs.close()))
  }

  async #make(workspaceId: string): Promise<InProcessJobs> {
    const { store, pool, limits, log } = this.#of
    const jobs = new InProcessJobs({
      store: store.workspace(workspaceId).jobs,
      works: worksOf(pool),
      limits,
      explain: (error) => {
        const failure = failureOf(error)
        if (failure.code === 'internal') log(error)
        return jobFailureOf(failure)
      },
    })
    await jobs.recover()
    return jobs
  }
}
