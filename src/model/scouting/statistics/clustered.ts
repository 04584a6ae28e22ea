import { studentQuantile } from './distributions.ts'

export interface Clustered {
  mean: number
  /** Null where everything is of one cluster, which tells nothing about others. */
  standardError: number | null
  /** 95 %, on Student's t with one degree of freedom less than there are clusters. */
  interval: [number, number] | null
  clusters: number
}

/**
 * A weighted mean whose values hang together in clusters: its error comes from how the clusters' sums differ, so that ten values
 * of one match are not taken for ten matches. The ratio estimator's linearised error with the factor M / (M − 1); of clusters
 * of one size it is the standard error of their means.
 *
 * Source: Cochran, Sampling Techniques (3rd edition 1977), chapter 9A; Liang & Zeger, Biometrika 73 (1986), 13–22.
 * @returns null where no weight is given
 */
export function clusteredMean(values: readonly { value: number; weight: number; cluster: string }[]): Clustered | null {
  const total = values.reduce((sum, { weight }) => sum + weight, 0)
  if (!(total > 0)) return null
  const mean = values.reduce((sum, { value, weight }) => sum + value * weight, 0) / total
  const off = new Map<string, number>()
  for (const { value, weight, cluster } of values)
    if (weight > 0) off.set(cluster, (off.get(cluster) ?? 0) + weight * (value - mean))
  const clusters = off.size
  if (clusters < 2) return { mean, standardError: null, interval: null, clusters }
  const squares = [...off.values()].reduce((sum, each) => sum + each * each, 0)
  const standardError = Math.sqrt((clusters / (clusters - 1)) * squares) / total
  const half = studentQuantile(0.975, clusters - 1) * standardError
  return { mean, standardError, interval: [mean - half, mean + half], clusters }
}
