import {
  type Alliance,
  alliances,
  type EventRecord,
  type Match,
  type Result,
  type ResultSide,
} from '../../scouting/types.ts'
import { inOrder, voided } from '../order.ts'
import { slotsOf } from '../seats.ts'
import { type Earned, earnedIn, piecesAt, type RankedGame } from './earned.ts'
import { lotOf } from './lot.ts'
import type { Criterion, EventRanking, RankingRow, Share } from './types.ts'

export interface RankingRequest {
  game: RankedGame
  event: Pick<EventRecord, 'teams' | 'level'>
  matches: readonly Match[]
  results: readonly Result[]
  /** Splits ties that are left at the end. */
  seed: number
}

/**
 * The ranking after the qualification matches, by the game's rules. Each team gets its alliance's ranking points for the
 * outcome and for the bonuses; ties in ranking points are broken by the game's further criteria, and by lot at the end. The score that
 * breaks ties is the alliance's total, points from fouls included.
 *
 * - A match that a later play voids does not count, nor does one without a result.
 * - A surrogate's match counts for nothing: not for its ranking points, its criteria, or the number of its matches.
 * - A robot that is absent or disqualified earns nothing, for no criterion, and the match counts as one of its matches; to the
 *   disqualified it is a lost one. That is common practice in such events, without a published source; the rules of the event decide.
 */
export function rankEvent({ game, event, matches, results, seed }: RankingRequest): EventRanking {
  const criteria: Criterion[] = ['rankingPoints', ...game.ranking.then]
  const qualification = matches.filter(({ phase }) => phase === 'qualification').toSorted(inOrder)
  const gone = voided(qualification)
  const standing = qualification.filter(({ id }) => !gone.has(id))
  const resultOf = new Map(results.map((result) => [result.match, result]))
  const counted = standing.filter(({ id }) => resultOf.has(id))
  const shares = new Map<string, Share[]>(event.teams.map(({ team }) => [team, []]))
  const untold: EventRanking['untold'] = []
  for (const match of counted) {
    const result = resultOf.get(match.id)!
    const earned = earnedIn(game, event.level, result)
    for (const alliance of alliances) {
      const missing = criteria.flatMap((criterion, index) =>
        brings(criterion, result[alliance], earned[alliance]) === null ? [index] : [],
      )
      const { untold: bonuses } = earned[alliance]
      if (missing.length + bonuses.length > 0) untold.push({ match: match.id, alliance, bonuses, criteria: missing })
    }
    for (const [team, share] of sharesOf(match, { result, earned, criteria })) shares.get(team)?.push(share)
  }
  const rows = [...shares].map(([team, own]) => rowOf(team, own, { criteria, per: game.ranking.per }))
  return {
    criteria,
    per: game.ranking.per,
    seed,
    rows: inRank(rows, game.ranking.per, seed),
    counted: counted.length,
    voided: gone.size,
    waiting: standing.length - counted.length,
    untold,
  }
}

/** What an alliance's side of a result brings for a criterion; null where the result does not tell. */
function brings(criterion: Criterion, { points, pieces }: ResultSide, earned: Earned): number | null {
  switch (criterion) {
    case 'rankingPoints':
      return earned.rankingPoints
    case 'score':
      return points.total
    case 'autoPoints':
      return points.autonomous ?? null
    case 'finishPoints':
      return points.finishes ?? null
    default:
      return piecesAt(criterion.pieces, pieces)
  }
}

function sharesOf(
  match: Match,
  of: { result: Result; earned: Record<Alliance, Earned>; criteria: readonly Criterion[] },
): [team: string, share: Share][] {
  return slotsOf(match).map(({ seat: { alliance }, slot: { team, counts, state } }) => {
    const earned = of.earned[alliance]
    const nothing = { rankingPoints: 0, bonuses: [], brought: of.criteria.map(() => 0) }
    const share = { match: match.id, alliance }
    if (!counts) return [team, { ...share, as: 'apart', ...nothing }]
    if (state === 'absent' || state === 'disqualified') return [team, { ...share, as: state, ...nothing }]
    const brought = of.criteria.map((criterion) => brings(criterion, of.result[alliance], earned) ?? 0)
    const { outcome, bonuses, rankingPoints } = earned
    return [team, { ...share, as: outcome, rankingPoints, bonuses, brought }]
  })
}

function rowOf(
  team: string,
  shares: Share[],
  { criteria, per }: { criteria: readonly Criterion[]; per: 'match' | 'total' },
): RankingRow {
  const count = (...as: Share['as'][]) => shares.filter((share) => as.includes(share.as)).length
  const played = shares.length - count('apart')
  const sums = criteria.map((_, index) => shares.reduce((sum, { brought }) => sum + brought[index]!, 0))
  return {
    rank: 0,
    team,
    played,
    won: count('won'),
    tied: count('tied'),
    lost: count('lost', 'disqualified'),
    absent: count('absent'),
    disqualified: count('disqualified'),
    apart: count('apart'),
    sums,
    values: sums.map((sum) => (per === 'total' ? sum : played === 0 ? 0 : sum / played)),
    decidedBy: null,
    byLot: false,
    shares,
  }
}

/** Below this share of the numbers compared two of them are level: they are sums of whole and half points, which rounding moves by less. */
const level = 1e-9

/** The first criterion in which two teams differ, with who is ahead; null where they are level in all. */
function firstDifference(
  a: RankingRow,
  b: RankingRow,
  per: 'match' | 'total',
): { criterion: number; sign: number } | null {
  for (let criterion = 0; criterion < a.sums.length; criterion++) {
    // Means are compared without dividing, so that 1/3 and 2/6 are level.
    const [ours, theirs] =
      per === 'match' && a.played > 0 && b.played > 0
        ? [a.sums[criterion]! * b.played, b.sums[criterion]! * a.played]
        : [a.values[criterion]!, b.values[criterion]!]
    if (Math.abs(ours - theirs) > level * Math.max(1, Math.abs(ours), Math.abs(theirs)))
      return { criterion, sign: theirs - ours }
  }
  return null
}

function inRank(rows: readonly RankingRow[], per: 'match' | 'total', seed: number): RankingRow[] {
  const lots = new Map(rows.map(({ team }) => [team, lotOf(seed, team)]))
  const sorted = rows.toSorted((a, b) => {
    const difference = firstDifference(a, b, per)
    if (difference) return difference.sign
    return lots.get(a.team)! - lots.get(b.team)! || (a.team < b.team ? -1 : 1)
  })
  const decided = sorted.map((row, index) => {
    const next = sorted[index + 1]
    return next ? firstDifference(row, next, per) : null
  })
  return sorted.map((row, index) => ({
    ...row,
    rank: index + 1,
    decidedBy: decided[index]?.criterion ?? null,
    byLot: (index + 1 < sorted.length && decided[index] === null) || (index > 0 && decided[index - 1] === null),
  }))
}
