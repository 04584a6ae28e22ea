import {
  type LineupReport,
  type LineupRequest,
  matchesOf,
  type PlayLineups,
  searchLineups,
} from '../../model/match/lineup/index.ts'
import type { Part } from './part.ts'
import type { Pool } from './pool.ts'

/** A search takes at most so many threads, so that others get their turn. */
const mostShares = 2

/** A search for the best line-up whose rounds threads share; the same answer as by one. Its progress is matches of line-ups. */
export async function lineupInParts(
  pool: Pool,
  request: LineupRequest,
  { signal, progress }: Part,
): Promise<LineupReport> {
  const failed = new AbortController()
  const either = AbortSignal.any([signal, failed.signal])
  const shares = Math.min(mostShares, pool.threads)
  let [done, total] = [0, 0]
  const play: PlayLineups = async (lineups, from, to) => {
    const parts = await Promise.all(
      Array.from({ length: shares }, (_, share) => {
        const own = lineups.filter((_, k) => k % shares === share)
        return own.length > 0 ? pool.run('lineups', { request, lineups: own, from, to }, either) : []
      }),
    )
    done += lineups.length * (to - from)
    progress?.(done, total)
    return lineups.map((_, k) => parts[k % shares]![Math.floor(k / shares)]!)
  }
  try {
    const lineups = await pool.run('candidates', { request }, either)
    total = matchesOf(lineups.length)
    progress?.(0, total)
    return await searchLineups(request, { lineups, play })
  } catch (error) {
    failed.abort()
    throw error
  }
}
