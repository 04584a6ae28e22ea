/** A forecast chance, and what came: 1 that it was so, 0 that it was not, ½ a tie. */
export interface Pair {
  forecast: number
  came: number
}

/** The best rising fit at one forecast value. */
export interface Fitted {
  forecast: number
  /** How often it came true, neighbours pooled until the curve rises. */
  came: number
  pairs: number
}

/**
 * The rising sequence that is nearest to the values in weighted squares, by pooling neighbours that fall.
 *
 * Source: Ayer, Brunk, Ewing, Reid & Silverman, Annals of Mathematical Statistics 26 (1955), 641–647.
 */
export function poolAdjacentViolators(
  values: ArrayLike<number>,
  weights: ArrayLike<number> = new Float64Array(values.length).fill(1),
): Float64Array {
  const level = new Float64Array(values.length)
  const weight = new Float64Array(values.length)
  const ends = new Int32Array(values.length)
  let blocks = 0
  for (let i = 0; i < values.length; i++) {
    level[blocks] = values[i]!
    weight[blocks] = weights[i]!
    ends[blocks] = i + 1
    blocks++
    while (blocks > 1 && level[blocks - 2]! >= level[blocks - 1]!) {
      const [a, b] = [blocks - 2, blocks - 1]
      const both = weight[a]! + weight[b]!
      level[a] = (weight[a]! * level[a]! + weight[b]! * level[b]!) / both
      weight[a] = both
      ends[a] = ends[b]!
      blocks--
    }
  }
  const fitted = new Float64Array(values.length)
  for (let block = 0, from = 0; block < blocks; block++) {
    fitted.fill(level[block]!, from, ends[block]!)
    from = ends[block]!
  }
  return fitted
}

/** Chances that differ by rounding alone are one. */
const key = (chance: number): number => Math.round(chance * 1e9)

/** Which distinct forecast each pair has, counted from the lowest. */
export function distinct(forecasts: readonly number[]): { values: number[]; place: number[] } {
  const byKey = new Map(forecasts.map((forecast) => [key(forecast), forecast]))
  const keys = [...byKey.keys()].sort((a, b) => a - b)
  const places = new Map(keys.map((each, k) => [each, k]))
  return { values: keys.map((each) => byKey.get(each)!), place: forecasts.map((each) => places.get(key(each))!) }
}

export function risingFit(pairs: readonly Pair[]): Fitted[] {
  const { values, place } = distinct(pairs.map(({ forecast }) => forecast))
  const sums = new Float64Array(values.length)
  const counts = new Float64Array(values.length)
  for (const [i, { came }] of pairs.entries()) {
    sums[place[i]!]! += came
    counts[place[i]!]! += 1
  }
  const shares = sums.map((sum, k) => sum / counts[k]!)
  const fitted = poolAdjacentViolators(shares, counts)
  return values.map((forecast, k) => ({ forecast, came: fitted[k]!, pairs: counts[k]! }))
}

export interface Decomposed {
  /** Mean squared error: miscalibration − discrimination + uncertainty. */
  score: number
  /** What is lost because chances do not say how often things come true. */
  miscalibration: number
  /** What is won because some chances differ from others, and rightly. */
  discrimination: number
  /** What the one best chance for all would score. */
  uncertainty: number
  curve: Fitted[]
}

/**
 * The Brier score in three parts, by the best rising fit of what came on what was forecast (CORP).
 *
 * Source: Dimitriadis, Gneiting & Jordan, Proceedings of the National Academy of Sciences 118 (2021), e2016191118.
 */
export function decompose(pairs: readonly Pair[]): Decomposed {
  const curve = risingFit(pairs)
  const at = new Map(curve.map(({ forecast, came }) => [key(forecast), came]))
  const base = pairs.reduce((sum, { came }) => sum + came, 0) / pairs.length
  const mean = (chance: (pair: Pair) => number) =>
    pairs.reduce((sum, pair) => sum + (chance(pair) - pair.came) ** 2, 0) / pairs.length
  const score = mean(({ forecast }) => forecast)
  const calibrated = mean(({ forecast }) => at.get(key(forecast))!)
  const uncertainty = mean(() => base)
  return {
    score,
    miscalibration: score - calibrated,
    discrimination: uncertainty - calibrated,
    uncertainty,
    curve,
  }
}

/** Each match from both sides, so that it makes no difference which alliance is called red. */
export const fromBothSides = (pairs: readonly Pair[]): Pair[] => [
  ...pairs,
  ...pairs.map(({ forecast, came }) => ({ forecast: 1 - forecast, came: 1 - came })),
]
