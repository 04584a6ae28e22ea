import type { Calibration, SeasonReport, SeasonRequest } from '../../model/match/scores/types.ts'
import type { Pool } from './pool.ts'

/** A season takes at most so many threads, so that others get their turn. */
const mostShares = 2

/** Matches of one part. */
const matchesAtOnce = 4

/** A season whose matches are simulated in parts that threads share; the same answer as by one. */
export async function seasonInParts(pool: Pool, request: SeasonRequest, signal: AbortSignal): Promise<SeasonReport> {
  const failed = new AbortController()
  const either = AbortSignal.any([signal, failed.signal])
  const calibrations: Calibration[] = []
  const total = request.matches.length
  let next = 0
  const share = async () => {
    while (next < total) {
      const from = next
      next = Math.min(total, from + matchesAtOnce)
      const part = await pool.run('calibrations', { request, from, to: next }, either)
      for (const [k, calibration] of part.entries()) calibrations[from + k] = calibration
    }
  }
  try {
    await Promise.all(Array.from({ length: Math.min(mostShares, pool.threads) }, share))
    return await pool.run('season', { request, calibrations }, either)
  } catch (error) {
    failed.abort()
    throw error
  }
}
