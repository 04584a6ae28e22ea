import erfc from '@stdlib/math-base-special-erfc'
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { atomic } from './atoms.ts'
import type { Distribution } from './distribution.ts'

/**
 * Log-normal by its median and its spread, the geometric standard deviation (at least 1; 1 is a point mass).
 * Mean = median · exp(σ²/2) with σ = ln spread.
 */
export function lognormal(median: number, spread: number): Distribution {
  const sigma = Math.log(spread)
  if (!(sigma > 0) || median === 0) return atomic([median])
  const mu = Math.log(median)
  const mean = median * Math.exp((sigma * sigma) / 2)
  return {
    mean,
    variance: mean * mean * Math.expm1(sigma * sigma),
    support: [0, Number.POSITIVE_INFINITY],
    cdf: (x) => (x <= 0 ? 0 : 0.5 * erfc(-(Math.log(x) - mu) / (sigma * Math.SQRT2))),
    quantile: (p) => Math.exp(mu + sigma * normalQuantile(p, 0, 1)),
    density: (x) => {
      if (x <= 0) return 0
      const z = (Math.log(x) - mu) / sigma
      return Math.exp(-0.5 * z * z) / (x * sigma * Math.sqrt(2 * Math.PI))
    },
    atoms: null,
  }
}
