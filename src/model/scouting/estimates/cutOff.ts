import { upperTail } from '../statistics/normal.ts'

/** A factor of a likelihood that is taken for a normal one: exp(log − ½ precision (m − mean)²). */
export interface Site {
  log: number
  mean: number
  precision: number
}

/**
 * What a time that was cut off says of its match's mean logarithm m: P(x > c | m), as the normal factor that leaves a belief
 * N(mean, variance) with the same moments and the same evidence (expectation propagation).
 *
 * Source: Minka, Proceedings of UAI 17 (2001), 362–369; Rasmussen & Williams, Gaussian Processes for Machine Learning
 * (2006), 3.6, for the moments.
 *
 * @param c logarithm of the time up to which the trip had lasted
 * @param within variance of single times about m
 */
export function cutOff(c: number, within: number, { mean, variance }: { mean: number; variance: number }): Site {
  const spread = Math.sqrt(within + variance)
  const z = (c - mean) / spread
  const { log, hazard } = upperTail(z)
  const after = mean + (variance / spread) * hazard
  const left = variance - (variance * variance * hazard * (hazard - z)) / (within + variance)
  const precision = Math.max(1e-9, 1 / left - 1 / variance)
  const own = (after / left - mean / variance) / precision
  const evidence = 0.5 * Math.log1p(variance * precision) + (0.5 * (mean - own) ** 2) / (variance + 1 / precision)
  return { log: log + evidence, mean: own, precision }
}
