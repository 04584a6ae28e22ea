import { studentCdf, studentQuantile } from './distributions.ts'

export interface Difference {
  t: number
  df: number
  /** Two-sided. */
  p: number
  low: number
  high: number
}

function summary(values: readonly number[]): { n: number; mean: number; variance: number } {
  const n = values.length
  const mean = values.reduce((sum, x) => sum + x, 0) / n
  return { n, mean, variance: values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (n - 1) }
}

/** A difference with its standard error, on Student's t. */
export function differenceOn(off: number, error: number, df: number, level = 0.95): Difference {
  const half = studentQuantile((1 + level) / 2, df) * error
  const t = off / error
  return { t, df, p: 2 * studentCdf(-Math.abs(t), df), low: off - half, high: off + half }
}

/** Means of samples with spreads of their own. Source: Welch, Biometrika 34 (1947), 28–35. */
export function welch(a: readonly number[], b: readonly number[], level = 0.95): Difference {
  const [one, other] = [summary(a), summary(b)]
  const [u, v] = [one.variance / one.n, other.variance / other.n]
  const df = (u + v) ** 2 / (u ** 2 / (one.n - 1) + v ** 2 / (other.n - 1))
  return differenceOn(one.mean - other.mean, Math.sqrt(u + v), df, level)
}

/** Means of samples with one spread. Source: Student, Biometrika 6 (1908), 1–25. */
export function pooled(a: readonly number[], b: readonly number[], level = 0.95): Difference {
  const [one, other] = [summary(a), summary(b)]
  const df = one.n + other.n - 2
  const variance = ((one.n - 1) * one.variance + (other.n - 1) * other.variance) / df
  return differenceOn(one.mean - other.mean, Math.sqrt(variance * (1 / one.n + 1 / other.n)), df, level)
}

/** Mean of differences pair by pair. */
export function paired(a: readonly number[], b: readonly number[], level = 0.95): Difference {
  const { n, mean, variance } = summary(a.map((x, i) => x - (b[i] as number)))
  return differenceOn(mean, Math.sqrt(variance / n), n - 1, level)
}
