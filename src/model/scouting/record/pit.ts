import { Uniforms } from '../../random/index.ts'
import { randomisedPit } from '../statistics/index.ts'
import { type Alliance, alliances } from '../types.ts'
import { rangeOf, successes } from './calls.ts'
import { drawOf, streams } from './draws.ts'
import { placeIn } from './histogram.ts'
import type { KeptForecast } from './types.ts'

export interface PitHistogram {
  /** Scores by where they lay in their forecasts, from far below to far above, in classes of one width. */
  counts: number[]
  /** Where each count lies with 90 % at least if forecasts hold. */
  low: number
  high: number
}

/** Scores from which there are ten classes instead of five. */
const many = 100

/** Where a score lay in its forecast, 0 to 1: among equal points by a number that is the forecast's own for good. */
export function pitOf({ id, body }: Pick<KeptForecast, 'id' | 'body'>, alliance: Alliance, observed: number): number {
  const { below, equal } = placeIn(body.scores[alliance], observed)
  return randomisedPit(below, equal, new Uniforms(drawOf(id), [streams[alliance]]).next())
}

/**
 * Even if forecasts hold: higher in the middle says that they leave too much open, higher at both ends too little.
 *
 * Source: Czado, Gneiting & Held, Biometrics 65 (2009), 1254–1261, on randomised values of counts.
 */
export function pitHistogram(values: readonly number[]): PitHistogram {
  const classes = values.length >= many ? 10 : 5
  const counts = new Array<number>(classes).fill(0)
  for (const value of values) counts[Math.min(classes - 1, Math.floor(value * classes))]! += 1
  const [low, high] = rangeOf(successes(values.map(() => 1 / classes)), 0.05)
  return { counts, low, high }
}

export const pitsOf = (forecast: KeptForecast, observed: { [alliance in Alliance]: number }): number[] =>
  alliances.map((alliance) => pitOf(forecast, alliance, observed[alliance]))
