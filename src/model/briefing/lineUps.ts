import { wonBy } from './differences.ts'
import type { PlayedVersion, PlayVersions, Version } from './types.ts'

/** Matches of each line-up after each round, and how many go on. The last two differ by less than a hundredth's error then. */
const rounds = [
  [200, 8],
  [600, 4],
  [1500, 2],
  [3000, 2],
] as const

export interface Standing {
  version: Version
  played: PlayedVersion
}

const joined = (a: PlayedVersion, b: PlayedVersion): PlayedVersion => ({
  margins: Float64Array.from([...a.margins, ...b.margins]),
  rankingPoints: Float64Array.from([...a.rankingPoints, ...b.rankingPoints]),
  met: Uint16Array.from([...a.met, ...b.met]),
  sums: [...a.sums, ...b.sums],
})

const winsOf = ({ played }: Standing) =>
  played.margins.reduce((sum, margin) => sum + wonBy(margin), 0) / played.margins.length

const pointsOf = ({ played }: Standing) =>
  played.margins.reduce((sum, margin) => sum + margin, 0) / played.margins.length

/**
 * Line-ups by successive halving on the same luck, best first: the better half of each round goes on, what was played before
 * counts on, and of those that play alike one goes on. Equal chances, as where a match is as good as won, are ordered by points.
 *
 * Source: Karnin, Koren & Somekh, Almost optimal exploration in multi-armed bandits (ICML 2013).
 */
export async function bestLineUps(candidates: readonly Version[], play: PlayVersions): Promise<Standing[]> {
  let left: Standing[] = []
  let from = 0
  for (const [to, goOn] of rounds) {
    const versions = from === 0 ? candidates : left.map(({ version }) => version)
    const more = await play(versions, { from, to })
    const all = versions.map((version, k) => ({
      version,
      played: from === 0 ? more[k]! : joined(left[k]!.played, more[k]!),
    }))
    left = different(all)
      .sort((a, b) => winsOf(b) - winsOf(a) || pointsOf(b) - pointsOf(a))
      .slice(0, goOn)
    from = to
  }
  return left
}

/** One of those with the same leads in every match: a way can allow what a robot never does. */
function different(standings: readonly Standing[]): Standing[] {
  const first = new Map<string, Standing>()
  for (const standing of standings) {
    const key = standing.played.margins.join()
    if (!first.has(key)) first.set(key, standing)
  }
  return [...first.values()]
}
