/**
 * A distribution that carries its own moments, so that one table-driven test covers every kind.
 * Times in seconds (a pace: a factor).
 */
export interface Distribution {
  readonly mean: number
  readonly variance: number
  /** Least and greatest value; the greatest may be Infinity. */
  readonly support: readonly [number, number]
  cdf(x: number): number
  /** Inverse cdf for 0 < p < 1: drawing is `quantile(uniform)`. */
  quantile(p: number): number
  /** Density, or null where the distribution is made of atoms. */
  readonly density: ((x: number) => number) | null
  /** Atoms [value, probability], or null where there is a density. */
  readonly atoms: readonly (readonly [number, number])[] | null
}
