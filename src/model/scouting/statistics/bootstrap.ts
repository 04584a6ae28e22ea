import { Uniforms } from '../../random/uniforms.ts'

/**
 * A statistic of samples drawn with replacement, each as large as the values.
 *
 * Source: Efron & Tibshirani, An Introduction to the Bootstrap (1993), chapters 5 and 6.
 */
export function bootstrap<Of>(
  values: readonly Of[],
  statistic: (sample: readonly Of[]) => number,
  { replicates, seed }: { replicates: number; seed: number },
): Float64Array {
  const uniforms = new Uniforms(seed)
  return Float64Array.from({ length: replicates }, () =>
    statistic(values.map(() => values[uniforms.below(values.length)] as Of)),
  )
}

/** Standard error of the mean over all samples that could be drawn. */
export function idealError(values: readonly number[]): number {
  const mean = values.reduce((sum, x) => sum + x, 0) / values.length
  return Math.sqrt(values.reduce((sum, x) => sum + (x - mean) ** 2, 0)) / values.length
}
