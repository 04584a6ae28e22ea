import { clusteredMean } from '../statistics/index.ts'
import type { Compared, Known } from './types.ts'

/** A time on the field beside the model's for the same legs. */
export interface Pair {
  field: number
  model: { mean: number; variance: number }
  /** Its share of the product-limit estimate. */
  share: number
  run: string
}

/**
 * Means of both, and of the difference pair by pair, with errors clustered by run: legs that are longer by the model too widen
 * nothing. The field's interval is the difference's, put on the model's mean.
 *
 * @returns null where there is no pair
 */
export function compared(pairs: readonly Pair[]): Compared | null {
  const off = clusteredMean(
    pairs.map(({ field, model, share, run }) => ({ value: field - model.mean, weight: share, cluster: run })),
  )
  if (!off) return null
  const total = pairs.reduce((sum, { share }) => sum + share, 0)
  const mean = (of: (pair: Pair) => number) => pairs.reduce((sum, pair) => sum + pair.share * of(pair), 0) / total
  const model = mean((pair) => pair.model.mean)
  const field = model + off.mean
  const between = mean((pair) => (pair.model.mean - model) ** 2)
  const difference: Known = { mean: off.mean, interval95: off.interval }
  const interval95: Known['interval95'] = off.interval && [model + off.interval[0], model + off.interval[1]]
  return {
    trips: pairs.length,
    runs: off.clusters,
    model: { mean: model, sd: Math.sqrt(mean((pair) => pair.model.variance) + between) },
    field: { mean: field, interval95, sd: Math.sqrt(mean((pair) => (pair.field - field) ** 2)) },
    difference,
  }
}
