/** Priors that data leave in their family. */

import { logBeta, logGamma } from './logGamma.ts'

export interface Gamma {
  shape: number
  rate: number
}

/** A rate after so many in so much exposure. Source: Gelman et al., Bayesian Data Analysis (3rd ed. 2013), 2.6. */
export const gammaPoisson = ({ shape, rate }: Gamma, count: number, exposure: number): Gamma => ({
  shape: shape + count,
  rate: rate + exposure,
})

/** ln of the chance of a count under a Gamma prior, without what does not depend on the prior. */
export function logGammaPoisson({ shape, rate }: Gamma, count: number, exposure: number): number {
  return (
    logGamma(shape + count) - logGamma(shape) + shape * Math.log(rate) - (shape + count) * Math.log(rate + exposure)
  )
}

/** ln of the chance of hits and misses in one order under Beta(a, b). */
export const logBetaBinomial = (a: number, b: number, hits: number, misses: number): number =>
  logBeta(a + hits, b + misses) - logBeta(a, b)

/** ln of the chance of counts in one order under a Dirichlet prior. */
export function logDirichletMultinomial(alpha: readonly number[], counts: readonly number[]): number {
  const sum = (values: readonly number[]) => values.reduce((total, x) => total + x, 0)
  const all = sum(alpha)
  return (
    logGamma(all) -
    logGamma(all + sum(counts)) +
    alpha.reduce((total, a, k) => total + logGamma(a + (counts[k] as number)) - logGamma(a), 0)
  )
}

/** Means and standard deviations of a Dirichlet's shares. */
export function dirichletMoments(alpha: readonly number[]): { mean: number; sd: number }[] {
  const all = alpha.reduce((sum, a) => sum + a, 0)
  return alpha.map((a) => ({ mean: a / all, sd: Math.sqrt((a * (all - a)) / (all * all * (all + 1))) }))
}

/** μ | σ² ~ N(mean, σ²/weight), σ² inverse Gamma. */
export interface NormalInverseGamma {
  mean: number
  weight: number
  shape: number
  scale: number
}

/** Source: Gelman et al. (2013), 3.3. */
export function normalInverseGamma(prior: NormalInverseGamma, values: readonly number[]): NormalInverseGamma {
  const n = values.length
  const own = values.reduce((sum, x) => sum + x, 0) / n
  const weight = prior.weight + n
  const squares = values.reduce((sum, x) => sum + (x - own) ** 2, 0)
  return {
    mean: (prior.weight * prior.mean + n * own) / weight,
    weight,
    shape: prior.shape + n / 2,
    scale: prior.scale + squares / 2 + (prior.weight * n * (own - prior.mean) ** 2) / (2 * weight),
  }
}
