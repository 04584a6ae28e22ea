import type { Match } from '../types.ts'
import { consistencyBand } from './band.ts'
import { decompose, type Fitted, fromBothSides } from './calibration.ts'
import { type Calls, callsOf } from './calls.ts'
import { type Compared, comparedWith, type Judged, type Measure, scoresOf } from './compared.ts'
import { type Counting, countingForecasts } from './counting.ts'
import { type Coverage, coverageOf, levels } from './coverage.ts'
import { type PitHistogram, pitHistogram, pitsOf } from './pit.ts'
import { type Came, chanceOf, shareOf } from './scores.ts'
import type { KeptForecast, StandingResult } from './types.ts'

/** The calibration curve at one chance of the side that was given more, 0.5 to 1. */
export interface CurvePoint {
  forecast: number
  /** How often it won, a tie as half, by the best rising fit. */
  came: number
  /** Where that lies with 90 % if forecasts hold. */
  low: number
  high: number
  matches: number
}

/** How far forecasts can be trusted, from those that count and whose matches are over. */
export interface Judgement {
  matches: number
  /** Of all, and of those called with at least 0.7 and 0.9. */
  calls: Calls[]
  /** Brier score in its parts, each match from both sides: its uncertainty is what a coin scores. */
  brier: { score: number; miscalibration: number; discrimination: number; uncertainty: number }
  curve: CurvePoint[]
  /** Means over matches; `crps` in points. */
  means: { [measure in Measure]: number }
  coverage: Coverage[]
  pit: PitHistogram
  compared: Compared[]
}

export interface ForecastRecord {
  /** Every match that was forecast. */
  matches: Counting[]
  /** Matches with a result that counts, forecast or not. */
  played: number
  /** Null while no forecast can be judged. */
  judgement: Judgement | null
}

export interface RecordRequest {
  /** Oldest first. */
  forecasts: readonly KeptForecast[]
  /** The schedule, in the order of play. */
  matches: readonly Match[]
  results: readonly StandingResult[]
}

/** What became of an event's forecasts. */
export function recordOf({ forecasts, matches, results }: RecordRequest): ForecastRecord {
  const counting = countingForecasts(forecasts, matches, results)
  const voided = new Set(matches.flatMap(({ voids }) => voids ?? []))
  const over = new Set(results.map(({ match }) => match))
  return {
    matches: counting,
    played: matches.filter(({ id }) => over.has(id) && !voided.has(id)).length,
    judgement: judge(counting.flatMap(judgedOf)),
  }
}

function judgedOf({ state, forecast, result }: Counting): Judged[] {
  if (state !== 'scored' || !result) return []
  const points = { red: result.result.red.points.total, blue: result.result.blue.points.total }
  return [{ forecast, points, came: Math.sign(points.red - points.blue) as Came }]
}

function judge(judged: readonly Judged[]): Judgement | null {
  if (judged.length === 0) return null
  const { curve, ...brier } = decompose(pairsOf(judged))
  const calls = judged.map(callOf)
  const scores = judged.map(scoresOf)
  const mean = (measure: Measure) => scores.reduce((sum, each) => sum + each[measure], 0) / scores.length
  const both = judged.map(({ forecast: { body }, points }) =>
    (['red', 'blue'] as const).map((alliance) => ({ forecast: body.scores[alliance], observed: points[alliance] })),
  )
  return {
    matches: judged.length,
    calls: [0, 0.7, 0.9].map((atLeast) => callsOf(calls, atLeast)),
    brier,
    curve: curveOf(judged, curve),
    means: { brier: mean('brier'), rps: mean('rps'), crps: mean('crps') },
    coverage: levels.map((level) => coverageOf(both, level)),
    pit: pitHistogram(judged.flatMap(({ forecast, points }) => pitsOf(forecast, points))),
    compared: comparedWith(judged),
  }
}

const pairsOf = (judged: readonly Judged[]) =>
  fromBothSides(judged.map(({ forecast, came }) => ({ forecast: chanceOf(forecast.body), came: shareOf(came) })))

/** The side that was given more, red where both were given the same: as screens name it. */
function callOf({ forecast: { body }, came }: Judged): { chance: number; won: boolean } {
  const red = body.win >= body.loss
  return { chance: red ? body.win : body.loss, won: came === (red ? 1 : -1) }
}

/** The upper half says all: the lower one is the same seen from the other side. */
function curveOf(judged: readonly Judged[], curve: readonly Fitted[]): CurvePoint[] {
  const band = consistencyBand(judged.map(({ forecast: { id, body } }) => ({ id, win: body.win, tie: body.tie })))
  return curve.flatMap(({ forecast, came, pairs }, k): CurvePoint[] => {
    if (forecast < 0.5 - 1e-9) return []
    // At one half each match stands twice.
    const matches = Math.abs(forecast - 0.5) < 1e-9 ? pairs / 2 : pairs
    return [{ forecast, came, low: band[k]!.low, high: band[k]!.high, matches }]
  })
}
