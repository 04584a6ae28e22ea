export interface Shrunk {
  mean: number
  /** What is left of each one's distance from the mean. */
  factor: number
  values: number[]
}

/**
 * James–Stein estimates towards the mean of all, of numbers with one known variance: distances are multiplied by
 * 1 − (k − 3) variance / Σ (x − mean)², not below 0.
 *
 * Source: Efron & Morris, Journal of the American Statistical Association 70 (1975), 311–319.
 */
export function shrunk(values: readonly number[], variance: number): Shrunk {
  const mean = values.reduce((sum, x) => sum + x, 0) / values.length
  const squares = values.reduce((sum, x) => sum + (x - mean) ** 2, 0)
  const factor = Math.max(0, 1 - ((values.length - 3) * variance) / squares)
  return { mean, factor, values: values.map((x) => mean + factor * (x - mean)) }
}
