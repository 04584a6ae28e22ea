import { attemptsOf } from '../seen/index.ts'
import { normalCdf } from '../statistics/normal.ts'
import type { EventEstimates } from './event.ts'
import { type RateData, Rates } from './rates.ts'
import { exposureOf } from './teamData.ts'

/** Half-lives that are offered, in own matches. */
export const halfLives: readonly number[] = [Number.POSITIVE_INFINITY, 8, 4, 2]

export interface HalfLifeScore {
  halfLife: number
  /** Sum of the logarithms of what was given to the pieces that were then tried; higher is better. */
  logScore: number
  /** Less that of the first half-life, with its standard error over teams. */
  gain: number
  standardError: number
}

/**
 * How well each half-life would have forecast the pieces of every team's next match from the matches before it: the fairest
 * evidence for forgetting. The event's dispersion and departures are those of all matches, alike for every half-life; a
 * forecast is taken for normal over whole pieces.
 *
 * Source: Dawid, Journal of the Royal Statistical Society A 147 (1984), 278–292.
 */
export function halfLifeScores(event: EventEstimates, offered: readonly number[] = halfLives): HalfLifeScore[] {
  const { measures, input } = event
  const teams = input.teams.map((team) => {
    const { departing } = event.dataOf(team)
    return (input.seen.get(team) ?? []).flatMap((seen) => {
      const exposure = exposureOf(seen, measures, departing)
      return exposure > 0.05 && seen.teleop ? [{ count: attemptsOf(seen.teleop.goals), exposure }] : []
    })
  })
  const scores = offered.map((halfLife) => scoresOf(teams, { halfLife, dispersion: measures.dispersion }))
  const base = scores[0] ?? []
  return offered.map((halfLife, k) => {
    const own = scores[k] as number[]
    const gains = own.map((score, t) => score - (base[t] as number))
    const mean = gains.reduce((sum, x) => sum + x, 0) / Math.max(1, gains.length)
    const squares = gains.reduce((sum, x) => sum + (x - mean) ** 2, 0)
    return {
      halfLife,
      logScore: own.reduce((sum, x) => sum + x, 0),
      gain: mean * gains.length,
      standardError: gains.length > 1 ? Math.sqrt((gains.length * squares) / (gains.length - 1)) : 0,
    }
  })
}

/** By team: the sum over its matches from the second on, each forecast from what all teams had shown by then. */
function scoresOf(
  teams: readonly (readonly RateData[])[],
  { halfLife, dispersion }: { halfLife: number; dispersion: number },
): number[] {
  const scores = teams.map(() => 0)
  const most = Math.max(0, ...teams.map(({ length }) => length))
  for (let next = 1; next < most; next++) {
    const before = teams.map((own) => sumBefore(own, { next, halfLife, dispersion }))
    const rates = new Rates(before)
    for (const [t, own] of teams.entries()) {
      const match = own[next]
      if (!match) continue
      const { mean, variance } = rates.mean(before[t] as RateData)
      const expected = mean * match.exposure
      const sd = Math.sqrt(dispersion * expected + variance * match.exposure ** 2)
      const given = normalCdf((match.count + 0.5 - expected) / sd) - normalCdf((match.count - 0.5 - expected) / sd)
      scores[t]! += Math.log(Math.max(1e-12, given))
    }
  }
  return scores
}

function sumBefore(
  own: readonly RateData[],
  { next, halfLife, dispersion }: { next: number; halfLife: number; dispersion: number },
): RateData {
  let [count, exposure] = [0, 0]
  const last = Math.min(next, own.length) - 1
  for (let m = 0; m <= last; m++) {
    const match = own[m] as RateData
    const weight = 2 ** (-(last - m) / halfLife) / dispersion
    count += weight * match.count
    exposure += weight * match.exposure
  }
  return { count, exposure }
}
