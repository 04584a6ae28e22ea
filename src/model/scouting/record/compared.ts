import { normalCrps, type Outcome, paired } from '../statistics/index.ts'
import { alliances } from '../types.ts'
import { outcomeOf } from './baselines.ts'
import { fewest } from './coverage.ts'
import { histogramCrps } from './histogram.ts'
import { brierOf, type Came, chanceOf, rankedProbabilityScore } from './scores.ts'
import type { KeptForecast, Normal } from './types.ts'

/**
 * What is said without scouting: by a coin, with the same chance for all; that every alliance comes to what the event's came to, which
 * says of who wins what the coin says, so that only its scores are compared; by averages of each team's official totals.
 */
export const baselineNames = ['coin', 'event', 'teams'] as const
export type BaselineName = (typeof baselineNames)[number]

export const measures = ['brier', 'rps', 'crps'] as const
/** Squared error of the chance, ranked probability score, and how far scores lay off (points). Less is better in each. */
export type Measure = (typeof measures)[number]

/** A forecast with what came. */
export interface Judged {
  forecast: KeptForecast
  came: Came
  points: { red: number; blue: number }
}

export type Scores = { [measure in Measure]: number | null }

export interface Compared {
  baseline: BaselineName
  measure: Measure
  /** Matches of which the baseline said something. */
  matches: number
  /** Means over these. */
  ours: number
  theirs: number
  /** 95 % interval of ours less theirs, match by match; null with few matches. */
  difference: readonly [number, number] | null
}

const ofOutcome = (outcome: Outcome, came: Came) => ({
  brier: brierOf(chanceOf(outcome), came),
  rps: rankedProbabilityScore(outcome, came),
})

/** Means of both scores. */
const crps = (points: Judged['points'], off: (alliance: 'red' | 'blue', observed: number) => number): number =>
  alliances.reduce((sum, alliance) => sum + off(alliance, points[alliance]), 0) / alliances.length

export function scoresOf({ forecast: { body }, came, points }: Judged): { [measure in Measure]: number } {
  return {
    ...ofOutcome(body, came),
    crps: crps(points, (alliance, observed) => histogramCrps(body.scores[alliance], observed)),
  }
}

/** What a baseline would have got for the same match; null where it had nothing to say. */
export function baselineScores({ forecast: { body }, came, points }: Judged, baseline: BaselineName): Scores | null {
  if (baseline === 'coin') return { ...ofOutcome({ win: 0.5, tie: 0, loss: 0.5 }, came), crps: null }
  const { event, teams } = body.baselines
  const of = baseline === 'teams' ? teams : event && { red: event, blue: event }
  if (!of) return null
  const off = (alliance: 'red' | 'blue', observed: number) => {
    const { mean, sd }: Normal = of[alliance]
    return normalCrps(observed, mean, sd)
  }
  const outcome = baseline === 'event' ? { brier: null, rps: null } : ofOutcome(outcomeOf(of.red, of.blue), came)
  return { ...outcome, crps: crps(points, off) }
}

/** Our forecasts beside each baseline, on the matches of which both said something. */
export function comparedWith(judged: readonly Judged[]): Compared[] {
  const own = judged.map(scoresOf)
  return baselineNames.flatMap((baseline) => {
    const other = judged.map((each) => baselineScores(each, baseline))
    return measures.flatMap((measure): Compared[] => {
      const pairs = other.flatMap((scores, i): [number, number][] => {
        const theirs = scores?.[measure] ?? null
        return theirs === null ? [] : [[own[i]![measure], theirs]]
      })
      if (pairs.length === 0) return []
      const [ours, theirs] = [pairs.map(([a]) => a), pairs.map(([, b]) => b)]
      const mean = (values: readonly number[]) => values.reduce((sum, x) => sum + x, 0) / values.length
      const difference = pairs.length >= fewest ? paired(ours, theirs) : null
      return [
        {
          ...{ baseline, measure, matches: pairs.length },
          ...{ ours: mean(ours), theirs: mean(theirs) },
          difference: difference && [difference.low, difference.high],
        },
      ]
    })
  })
}
