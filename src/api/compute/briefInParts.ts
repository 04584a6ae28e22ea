import {
  type Briefing,
  type BriefingRequest,
  brief,
  type PlayedVersion,
  type PlayVersions,
} from '../../model/briefing/index.ts'
import { blockSize } from '../../model/match/precision.ts'
import type { Part } from './part.ts'
import type { Pool } from './pool.ts'

/** A briefing takes at most so many threads, so that others get their turn. */
const mostShares = 2

/** A briefing whose matches threads share: the same answer as by one. Its progress is steps of the work. */
export async function briefInParts(
  pool: Pool,
  request: BriefingRequest,
  { signal, progress }: Part,
): Promise<Briefing> {
  const failed = new AbortController()
  const either = AbortSignal.any([signal, failed.signal])
  const shares = Math.min(mostShares, pool.threads)
  const text = JSON.stringify(request)
  const play: PlayVersions = async (versions, of) => {
    const parts = await Promise.all(
      split(of, shares).map((part) => pool.run('versions', { request: text, versions, ...of, ...part }, either)),
    )
    return versions.map((_, k) => joined(parts.map((part) => part[k]!)))
  }
  try {
    return await brief(request, {
      play,
      lanes: (asked) => pool.run('lanes', asked, either),
      ...(progress && { progress }),
    })
  } catch (error) {
    failed.abort()
    throw error
  }
}

/** Matches in as many parts; each begins with a block where sums are asked for. */
function split(of: { from: number; to: number; sums?: boolean }, shares: number): { from: number; to: number }[] {
  const { from, to } = of
  const half = from + (to - from) / shares
  const at = of.sums ? Math.round(half / blockSize) * blockSize : Math.round(half)
  return shares === 1 || at <= from || at >= to
    ? [{ from, to }]
    : [
        { from, to: at },
        { from: at, to },
      ]
}

function joined(parts: readonly PlayedVersion[]): PlayedVersion {
  if (parts.length === 1) return parts[0]!
  return {
    margins: Float64Array.from(parts.flatMap(({ margins }) => [...margins])),
    rankingPoints: Float64Array.from(parts.flatMap(({ rankingPoints }) => [...rankingPoints])),
    met: Uint16Array.from(parts.flatMap(({ met }) => [...met])),
    sums: parts.flatMap(({ sums }) => sums),
  }
}
