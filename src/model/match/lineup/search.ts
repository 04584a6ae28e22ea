import { allLineups, rivalOf } from './lineups.ts'
import type { PlayedLineup } from './player.ts'
import type { Lineup, LineupReport, LineupRequest, LineupValue } from './types.ts'

/** Matches of each line-up after each round, and how many line-ups go on: half of those that the round has room for, in the end fewer. */
const rounds = [
  [250, 32],
  [500, 16],
  [1000, 8],
  [2000, 4],
  [4000, 3],
  [8000, 2],
] as const
const last = 20_000

/** Plays some line-ups, in their order. */
export type PlayLineups = (lineups: readonly Lineup[], from: number, to: number) => Promise<PlayedLineup[]>

export interface LineupSearch {
  /** Those to be played, the best first: see `candidatesFor`. */
  lineups: readonly Lineup[]
  play: PlayLineups
  /** Told after each round what is ahead by then, and how many line-ups are left: what a search that is stopped keeps. */
  after?(report: LineupReport, left: number): void
}

/** How many matches a search plays in all, at most: line-ups that play alike are played once. */
export function matchesOf(lineups: number): number {
  let left = lineups
  let from = 0
  let total = 0
  for (const [until, goOn] of rounds) {
    if (left <= 2) break
    total += left * (until - from)
    left = Math.min(left, goOn)
    from = until
  }
  return total + left * (last - from)
}

/** A line-up and what its matches so far were worth. */
interface Standing {
  lineup: Lineup
  values: Float64Array
  /** Of each round. */
  marks: readonly number[]
}

/**
 * The best of all line-ups by successive halving: those that the closed form thinks best are played, the better half goes
 * on, and what was played before counts on. Of line-ups that play alike one goes on. All play the same matches, so that they
 * differ by what they do, not by luck.
 *
 * Source: Karnin, Koren & Somekh, Almost optimal exploration in multi-armed bandits (ICML 2013).
 */
export async function searchLineups(
  request: LineupRequest,
  { lineups, play, after }: LineupSearch,
): Promise<LineupReport> {
  let left: Standing[] = lineups.map((lineup) => ({ lineup, values: new Float64Array(0), marks: [] }))
  // Few line-ups are not halved before the round for so few: that would choose between them by few matches.
  for (const [until, goOn] of rounds) {
    if (left.length <= 2) break
    left = better(await further(left, until, play), goOn)
    after?.(reportOf(request, left, lineups.length), left.length)
  }
  left = better(await further(left, last, play), 2)
  return reportOf(request, left, lineups.length)
}

async function further(left: readonly Standing[], until: number, play: PlayLineups): Promise<Standing[]> {
  const from = left[0]?.values.length ?? 0
  const more = await play(
    left.map(({ lineup }) => lineup),
    from,
    until,
  )
  const played = left.map(({ lineup, values, marks }, k) => {
    const all = new Float64Array(until)
    all.set(values)
    all.set(more[k]!.values, from)
    return { lineup, values: all, marks: [...marks, more[k]!.mark] }
  })
  return different(played)
}

/**
 * One of those that played every match alike, since a role can allow what a robot never does. Otherwise a handful of twins
 * would fill the places of a round, and the rest fall out after few matches.
 */
function different(standings: readonly Standing[]): Standing[] {
  const first = new Map<string, Standing>()
  for (const standing of standings) {
    const key = standing.marks.join()
    if (!first.has(key)) first.set(key, standing)
  }
  return [...first.values()]
}

/** The best so many; of equals the one that stood first. */
function better(standings: readonly Standing[], count: number): Standing[] {
  const means = new Map(standings.map((each) => [each, meanOf(each.values).mean]))
  return [...standings].sort((a, b) => means.get(b)! - means.get(a)!).slice(0, count)
}

function reportOf(request: LineupRequest, [best, second]: Standing[], simulated: number): LineupReport {
  const { values } = best!
  return {
    best: valued(request, best!),
    runnerUp: second ? valued(request, second) : null,
    loses: second ? meanOf(values.map((value, match) => value - (second.values[match] as number))) : null,
    worst: worstOf(request, values),
    replicates: values.length,
    seed: request.seed,
    candidates: allLineups(request).length,
    simulated,
  }
}

const valued = ({ roles }: LineupRequest, { lineup, values }: Standing): LineupValue => ({
  roles: lineup.map((role, i) => roles[i]![role]!),
  value: meanOf(values),
})

function worstOf(request: LineupRequest, values: Float64Array): LineupReport['worst'] {
  const sums = request.theirs.map(() => ({ sum: 0, count: 0 }))
  for (const [match, value] of values.entries()) {
    const own = sums[rivalOf(request, match)]!
    own.sum += value
    own.count++
  }
  const means = sums.map(({ sum, count }) => (count > 0 ? sum / count : Number.POSITIVE_INFINITY))
  const value = Math.min(...means)
  return { rival: means.indexOf(value), value }
}

function meanOf(values: Float64Array): { mean: number; standardError: number } {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0)
  return { mean, standardError: Math.sqrt(squares / (values.length - 1) / values.length) }
}
