import type { Works } from '../../jobs/index.ts'
import { longWorks } from '../compute/longWorks.ts'
import type { Pool } from '../compute/pool.ts'
import type { JobKind } from './contracts.ts'

/** The long computations as jobs, by the threads of a pool. What they are asked has been checked when the job was started. */
export function worksOf(pool: Pool): Works {
  const kinds = Object.keys(longWorks) as JobKind[]
  return Object.fromEntries(
    kinds.map((kind) => [
      kind,
      (request, { replaced, ...part }) => longWorks[kind].compute(pool.patient(replaced), request as never, part),
    ]),
  )
}
