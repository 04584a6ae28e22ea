import betainc from '@stdlib/math-base-special-betainc'
import betaln from '@stdlib/math-base-special-betaln'
import betaincinv from '@stdlib/math-base-special-kernel-betaincinv'
import { atomic } from './atoms.ts'
import type { Distribution } from './distribution.ts'

/** Weight of the likely value in a beta-PERT. */
const lambda = 4

export interface BetaShape {
  alpha: number
  beta: number
}

/** Shape of the beta-PERT: alpha = 1 + 4 (likely − low) / (high − low), beta = 1 + 4 (high − likely) / (high − low). */
export function betaShape(low: number, likely: number, high: number): BetaShape {
  return { alpha: 1 + (lambda * (likely - low)) / (high - low), beta: 1 + (lambda * (high - likely)) / (high - low) }
}

/**
 * Beta-PERT with λ = 4 between low and high: mean (low + 4 likely + high) / 6,
 * variance (mean − low)(high − mean) / 7. Low = high is a point mass.
 * Source: Malcolm, Roseboom, Clark & Fazar, Operations Research 7(5), 1959; variance exact, not the 1959 approximation.
 */
export function range(low: number, likely: number, high: number): Distribution {
  if (!(high > low)) return atomic([low])
  const { alpha, beta } = betaShape(low, likely, high)
  const width = high - low
  const mean = (low + lambda * likely + high) / (2 + lambda)
  const scale = Math.exp(-betaln(alpha, beta) - Math.log(width))
  return {
    mean,
    variance: ((mean - low) * (high - mean)) / (3 + lambda),
    support: [low, high],
    cdf: (x) => (x <= low ? 0 : x >= high ? 1 : betainc((x - low) / width, alpha, beta, true, false)),
    quantile: (p) => low + width * (betaincinv(alpha, beta, p, 1 - p)[0] as number),
    density: (x) => {
      if (x < low || x > high) return 0
      const u = (x - low) / width
      return scale * u ** (alpha - 1) * (1 - u) ** (beta - 1)
    },
    atoms: null,
  }
}
