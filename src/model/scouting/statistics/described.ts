import { compensatedSum } from '../../random/sum.ts'

export interface Described {
  mean: number
  /** With divisor n − 1. */
  sd: number
  /** Of successive numbers, about the mean of all. */
  autocorrelation: number
}

/** Mean, standard deviation and lag-1 autocorrelation in two passes, rounding taken back. */
export function described(values: readonly number[]): Described {
  const rough = compensatedSum(values) / values.length
  const mean = rough + compensatedSum(values.map((x) => x - rough)) / values.length
  const off = values.map((x) => x - mean)
  const squares = compensatedSum(off.map((x) => x * x))
  const products = compensatedSum(off.slice(1).map((x, i) => x * (off[i] as number)))
  return { mean, sd: Math.sqrt(squares / (values.length - 1)), autocorrelation: products / squares }
}

export const meanOf = (values: readonly number[]): number => compensatedSum(values) / values.length

/** In the middle; of an even number halfway. NaN for none. */
export function medianOf(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b)
  const half = sorted.length >> 1
  return sorted.length % 2 === 1
    ? (sorted[half] as number)
    : ((sorted[half - 1] as number) + (sorted[half] as number)) / 2
}

/** The value that a share p of sorted ones does not exceed, straight between neighbours (Hyndman & Fan 1996, type 7). */
export function quantileOf(sorted: ArrayLike<number>, p: number): number {
  const place = p * (sorted.length - 1)
  const below = Math.floor(place)
  const low = sorted[below] as number
  const high = sorted[Math.min(sorted.length - 1, below + 1)] as number
  return low + (place - below) * (high - low)
}

const buckets = 512

// Used within one call and never kept: an event asks for some hundred times four quantiles.
const counts = new Int32Array(buckets + 1)
let places = new Int16Array(1024)

/** The same quantiles of unsorted values without sorting all of them: only buckets that a quantile falls into are. */
export function quantilesOf(values: Float64Array, shares: readonly number[]): number[] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (let i = 0; i < values.length; i++) {
    const value = values[i] as number
    if (value < low) low = value
    if (value > high) high = value
  }
  if (!(high > low)) return shares.map(() => low)
  const scale = (buckets - 1e-6) / (high - low)
  counts.fill(0)
  if (places.length < values.length) places = new Int16Array(values.length)
  for (let i = 0; i < values.length; i++) {
    const bucket = ((values[i] as number) - low) * scale
    places[i] = bucket
    counts[(places[i] as number) + 1]!++
  }
  for (let k = 1; k <= buckets; k++) counts[k]! += counts[k - 1] as number
  const sorted = new Map<number, Float64Array>()
  const ranked = (rank: number): number => {
    let bucket = 0
    while ((counts[bucket + 1] as number) <= rank) bucket++
    let known = sorted.get(bucket)
    if (!known) {
      known = new Float64Array((counts[bucket + 1] as number) - (counts[bucket] as number))
      for (let i = 0, k = 0; i < values.length; i++) if (places[i] === bucket) known[k++] = values[i] as number
      sorted.set(bucket, known.sort())
    }
    return known[rank - (counts[bucket] as number)] as number
  }
  return shares.map((share) => {
    const place = share * (values.length - 1)
    const below = Math.floor(place)
    const first = ranked(below)
    return place > below ? first + (place - below) * (ranked(below + 1) - first) : first
  })
}
