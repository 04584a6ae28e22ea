import { normalCdf, type Outcome } from '../statistics/index.ts'
import { type Alliance, alliances, type Match, type Result } from '../types.ts'
import type { Baselines, Normal } from './types.ts'

interface Total {
  teams: string[]
  points: number
}

/** Alliances' totals that are needed for a forecast of all alike, and of teams. */
const [least, leastOfTeams] = [6, 10]

const mean = (values: readonly number[]): number => values.reduce((sum, x) => sum + x, 0) / values.length

function totalsOf(matches: readonly Match[], results: readonly Result[]): Total[] {
  const gone = new Set(matches.flatMap(({ voids }) => voids ?? []))
  const byId = new Map(matches.map((match) => [match.id, match]))
  return results.flatMap((result) => {
    const match = byId.get(result.match)
    if (!match || gone.has(match.id)) return []
    return alliances.map((alliance) => ({
      teams: match[alliance].filter(({ state }) => state !== 'absent').map(({ team }) => team),
      points: result[alliance].points.total,
    }))
  })
}

/**
 * What one would say of a match from the official totals alone, points from fouls included. `event`: all alliances are alike, with the
 * mean of the totals so far, their standard deviation (n − 1), and what the mean itself leaves open. `teams`: a team brings what its
 * alliances' totals were on average above or below that mean; the spread is how far each total so far lay off what the others say of it,
 * root mean square, since a fit to the same totals would be too bold. A team without a total brings the average. Plain forecasts
 * of our own choosing, without a published source.
 */
export function baselinesFor(match: Match, matches: readonly Match[], results: readonly Result[]): Baselines {
  const totals = totalsOf(
    matches,
    results.filter((result) => result.match !== match.id),
  )
  if (totals.length < least) return { event: null, teams: null }
  const points = totals.map((total) => total.points)
  const level = mean(points)
  const sd = Math.sqrt(points.reduce((sum, x) => sum + (x - level) ** 2, 0) / (points.length - 1))
  // Of whole points even where all totals were the same.
  const spread = (of: number): number => Math.max(of, 0.5)
  const event: Normal = { mean: level, sd: spread(sd * Math.sqrt(1 + 1 / points.length)) }
  if (totals.length < leastOfTeams) return { event, teams: null }
  const off = totals.map((total, i) => total.points - expected(total.teams, totals.toSpliced(i, 1)))
  const error = spread(Math.sqrt(mean(off.map((x) => x * x))))
  const of = (alliance: Alliance): Normal => ({
    mean: expected(
      match[alliance].map(({ team }) => team),
      totals,
    ),
    sd: error,
  })
  return { event, teams: { red: of('red'), blue: of('blue') } }
}

function expected(teams: readonly string[], totals: readonly Total[]): number {
  const level = mean(totals.map(({ points }) => points))
  const more = teams.map((team) => {
    const own = totals.filter((total) => total.teams.includes(team))
    return own.length > 0 ? mean(own.map(({ points }) => points)) - level : 0
  })
  return more.reduce((sum, x) => sum + x, level)
}

/** Win, tie and loss of two independent scores in whole points. */
export function outcomeOf(red: Normal, blue: Normal): Outcome {
  const sd = Math.hypot(red.sd, blue.sd)
  const lead = red.mean - blue.mean
  const loss = normalCdf((-0.5 - lead) / sd)
  const win = normalCdf((lead - 0.5) / sd)
  return { win, tie: Math.max(0, 1 - win - loss), loss }
}
