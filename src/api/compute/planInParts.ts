import { joinedWorth, type TripWorth } from '../../model/plan/shares.ts'
import type { PlanReport } from '../../model/plan/types.ts'
import type { Pool } from './pool.ts'
import type { Tasks } from './tasks.ts'

/** A plan takes at most so many threads, so that others get their turn. */
const mostThreads = 2

/** Worth, the longest part, is dealt into so many shares, so that who is done with the rest takes some of them. */
const worthShares = 8

/** A plan whose worth threads share; the same answer as by one, to the last bit. Where one part fails, the others are stopped. */
export async function planInParts(
  pool: Pool,
  request: Tasks['plan']['request'],
  signal: AbortSignal,
): Promise<PlanReport> {
  const { with: wanted = [], ...planned } = request
  if (!wanted.includes('worth')) return pool.run('plan', request, signal)
  const failed = new AbortController()
  const either = AbortSignal.any([signal, failed.signal])
  let report: PlanReport | undefined
  const worth: TripWorth[][] = []
  const share = (at: number) => async () => {
    worth[at] = await pool.run('worth', { planned, share: { at, of: worthShares } }, either)
  }
  const parts = [
    async () => {
      report = await pool.run('planPart', { planned, with: wanted }, either)
    },
    ...Array.from({ length: worthShares }, (_, at) => share(at)),
  ]
  const work = async () => {
    for (let part = parts.shift(); part; part = parts.shift()) await part()
  }
  try {
    await Promise.all(Array.from({ length: Math.min(mostThreads, pool.threads) }, work))
    return { ...report!, worth: joinedWorth(worth) }
  } catch (error) {
    failed.abort()
    throw error
  }
}
