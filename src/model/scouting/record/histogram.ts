import type { Histogram } from './types.ts'

/** Chances by whole points as so many of all matches: the same distribution in a tenth of the letters. */
export function histogramOf(distribution: readonly (readonly [number, number])[], replicates: number): Histogram {
  const first = distribution[0]?.[0] ?? 0
  const last = distribution.at(-1)?.[0] ?? first
  const counts = new Array<number>(last - first + 1).fill(0)
  for (const [points, chance] of distribution) counts[points - first] = Math.round(chance * replicates)
  return { first, counts }
}

const all = ({ counts }: Histogram): number => counts.reduce((sum, n) => sum + n, 0)

export const meanOfHistogram = (of: Histogram): number =>
  of.counts.reduce((sum, n, k) => sum + n * (of.first + k), 0) / all(of)

/** The least points that at least a share of the matches does not exceed. */
export function quantileIn(of: Histogram, share: number): number {
  // Of whole matches: rounding must not move a quantile that falls on one.
  const wanted = share * all(of) - 1e-9
  let sum = 0
  for (const [k, n] of of.counts.entries()) {
    sum += n
    if (sum >= wanted && n > 0) return of.first + k
  }
  return of.first + of.counts.length - 1
}

/** Share of matches with fewer points, and with as many. Simulated points are whole, so that the official ones are rounded. */
export function placeIn(of: Histogram, points: number): { below: number; equal: number } {
  const place = Math.round(points) - of.first
  const below = of.counts.reduce((sum, n, k) => (k < place ? sum + n : sum), 0)
  return { below: below / all(of), equal: (of.counts[place] ?? 0) / all(of) }
}

export interface Central {
  low: number
  high: number
  /** What the forecast itself gives it: more than was asked for, because points are whole. */
  mass: number
}

/** The interval in the middle that holds at least `level` of the matches. */
export function centralInterval(of: Histogram, level: number): Central {
  const tail = (1 - level) / 2
  const [low, high] = [quantileIn(of, tail), quantileIn(of, 1 - tail)]
  const inside = of.counts.reduce((sum, n, k) => (of.first + k >= low && of.first + k <= high ? sum + n : sum), 0)
  return { low, high, mass: inside / all(of) }
}

/**
 * How far a forecast of points lay off (points): ∫ (F(x) − 1{x ≥ observed})² dx = mean |X − observed| − ½ mean |X − X′|.
 *
 * Source: Gneiting & Raftery, Journal of the American Statistical Association 102 (2007), eq. 21.
 */
export function histogramCrps(of: Histogram, observed: number): number {
  const n = all(of)
  let [off, sum, apart] = [0, 0, 0]
  for (const [k, count] of of.counts.entries()) {
    off += count * Math.abs(of.first + k - observed)
    sum += count
    apart += (sum / n) * (1 - sum / n)
  }
  return off / n - apart
}
