import { groundOf } from '../../model/match/ground.ts'
import { matchReport } from '../../model/match/report.ts'
import { blocksOf, Collected } from '../../model/match/run.ts'
import type { MatchReport, MatchRequest } from '../../model/match/types.ts'
import type { Part } from './part.ts'
import type { Pool } from './pool.ts'

/** One set-up takes at most so many threads, so that others get their turn. */
const mostShares = 2

/** Blocks of one part: about a third of a second's work. */
const blocksAtOnce = 10

/**
 * Plays a match in parts that threads share: the same answer as by one thread, since what the parts say is added up in the
 * order of the matches. Where one part fails, the others are stopped.
 * Its progress is how many matches have been played, of how many at most.
 */
export async function matchInParts(
  pool: Pool,
  request: MatchRequest,
  { signal, progress }: Part,
): Promise<MatchReport> {
  const ground = groundOf(request.game)
  const collected = new Collected(ground, request)
  const total = blocksOf(request.replicates)
  const failed = new AbortController()
  const either = AbortSignal.any([signal, failed.signal])
  let next = 0
  const share = async () => {
    while (next < total && !collected.done) {
      const from = next
      next = Math.min(total, from + blocksAtOnce)
      const blocks = await pool.run('matches', { request, from, to: next }, either)
      for (const [k, sums] of blocks.entries()) collected.add(from + k, sums)
      progress?.(collected.sums.matches, request.replicates)
    }
  }
  try {
    await Promise.all(Array.from({ length: Math.min(mostShares, pool.threads, total) }, share))
  } catch (error) {
    failed.abort()
    throw error
  }
  return matchReport(ground, collected.sums, request.seed)
}
