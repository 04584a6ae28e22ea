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
