import type { Distribution } from './distribution.ts'

/**
 * Measured times as they are: atoms of 1/n, variance with divisor n, quantile the inverse cdf.
 * A fixed time is the one-atom case.
 */
export function atomic(values: readonly number[]): Distribution {
  const sorted = [...values].sort((a, b) => a - b)
  const count = sorted.length
  const mean = sorted.reduce((sum, value) => sum + value, 0) / count
  const variance = sorted.reduce((sum, value) => sum + (value - mean) ** 2, 0) / count
  return {
    mean,
    variance,
    support: [sorted[0] as number, sorted[count - 1] as number],
    cdf: (x) => upperBound(sorted, x) / count,
    quantile: (p) => sorted[Math.min(count - 1, Math.max(0, Math.ceil(p * count - 1e-12) - 1))] as number,
    density: null,
    atoms: sorted.map((value) => [value, 1 / count] as const),
  }
}

/** How many of the sorted values are at most x. */
function upperBound(sorted: readonly number[], x: number): number {
  let low = 0
  let high = sorted.length
  while (low < high) {
    const middle = (low + high) >> 1
    if ((sorted[middle] as number) <= x) low = middle + 1
    else high = middle
  }
  return low
}
