import { normalCdf, normalDensity } from './normal.ts'

export interface Brier {
  score: number
  reliability: number
  resolution: number
  uncertainty: number
  /** Mean of −ln of what was given to what happened. */
  log: number
}

/**
 * Scores of forecast chances: the mean squared error, which is reliability − resolution + uncertainty where forecasts are
 * grouped by their value.
 *
 * Sources: Brier, Monthly Weather Review 78 (1950), 1–3; Murphy, Journal of Applied Meteorology 12 (1973), 595–600.
 */
export function brier(forecasts: readonly number[], outcomes: readonly (0 | 1)[]): Brier {
  const n = forecasts.length
  const mean = (values: readonly number[]) => values.reduce((sum, x) => sum + x, 0) / values.length
  const base = mean(outcomes)
  let [reliability, resolution] = [0, 0]
  for (const value of new Set(forecasts)) {
    const own = outcomes.filter((_, i) => forecasts[i] === value)
    const share = mean(own)
    reliability += (own.length * (value - share) ** 2) / n
    resolution += (own.length * (share - base) ** 2) / n
  }
  return {
    score: mean(forecasts.map((p, i) => (p - (outcomes[i] as number)) ** 2)),
    reliability,
    resolution,
    uncertainty: base * (1 - base),
    log: mean(forecasts.map((p, i) => -Math.log(outcomes[i] === 1 ? p : 1 - p))),
  }
}

/** How far a normal forecast lay off (in the unit of the number). Source: Gneiting & Raftery, Journal of the American Statistical Association 102 (2007), eq. 21. */
export function normalCrps(observed: number, mean: number, sd: number): number {
  const z = (observed - mean) / sd
  return sd * (z * (2 * normalCdf(z) - 1) + 2 * normalDensity(z) - 1 / Math.sqrt(Math.PI))
}

/** The same of a forecast that is a sample: mean |X − y| − ½ mean |X − X′|. */
export function sampleCrps(observed: number, sample: readonly number[]): number {
  const sorted = sample.toSorted((a, b) => a - b)
  const n = sorted.length
  const off = sorted.reduce((sum, x) => sum + Math.abs(x - observed), 0) / n
  const apart = sorted.reduce((sum, x, i) => sum + (2 * i - n + 1) * x, 0) / (n * n)
  return off - apart
}

/** Where what happened lies in a forecast: the share below it, and of the share that equals it the part u. */
export const randomisedPit = (below: number, equal: number, u: number): number => below + u * equal
