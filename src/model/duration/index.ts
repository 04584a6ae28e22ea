/** Section 1 of the model: how long something takes, and how that varies from trip to trip. */
import type { Duration } from '../documents/types.ts'
import { atomic } from './atoms.ts'
import type { Distribution } from './distribution.ts'
import { lognormal } from './lognormal.ts'
import { range } from './range.ts'

export type { Distribution } from './distribution.ts'
export { massOnGrid } from './grid.ts'

/**
 * A Duration whose every draw is moved by a number of seconds, not below 0. The documents do not know it:
 * it carries an input that adds seconds to a log-normal, which would no longer be log-normal.
 */
export interface ShiftedDuration {
  kind: 'shifted'
  base: Duration
  by: number
}

export type AnyDuration = Duration | ShiftedDuration

/**
 * The distribution of a Duration, with mean, variance, cdf, quantile and support.
 * @example distributionOf({ kind: 'range', low: 2, likely: 3, high: 7 }).mean // 3.5
 */
export function distributionOf(duration: AnyDuration): Distribution {
  switch (duration.kind) {
    case 'fixed':
      return atomic([duration.seconds])
    case 'range':
      return range(duration.low, duration.likely, duration.high)
    case 'lognormal':
      return lognormal(duration.median, duration.spread)
    case 'samples':
      return atomic(duration.seconds)
    case 'shifted':
      return shifted(distributionOf(duration.base), duration.by)
  }
}

/** Mean in seconds. */
export const mean = (duration: AnyDuration): number => distributionOf(duration).mean
/** Variance in seconds squared. */
export const variance = (duration: AnyDuration): number => distributionOf(duration).variance
/** Probability of at most x seconds. */
export const cdf = (duration: AnyDuration, x: number): number => distributionOf(duration).cdf(x)
/** The time that a share p of the draws does not exceed, 0 < p < 1. */
export const quantile = (duration: AnyDuration, p: number): number => distributionOf(duration).quantile(p)
/** Least and greatest draw (s). */
export const support = (duration: AnyDuration): readonly [number, number] => distributionOf(duration).support

function shifted(base: Distribution, by: number): Distribution {
  const atoms = base.atoms
  if (atoms) return atomic(atoms.map(([value]) => Math.max(0, value + by)))
  if (base.support[0] + by >= 0)
    return {
      mean: base.mean + by,
      variance: base.variance,
      support: [base.support[0] + by, base.support[1] + by],
      cdf: (x) => base.cdf(x - by),
      quantile: (p) => base.quantile(p) + by,
      density: (x) => (base.density as (x: number) => number)(x - by),
      atoms: null,
    }
  return clipped(base, by)
}

/** A shift that would go below 0: the part below is gathered at 0. Represented by 4,000 atoms at its quantiles. */
function clipped(base: Distribution, by: number): Distribution {
  const count = 4000
  return atomic(Array.from({ length: count }, (_, i) => Math.max(0, base.quantile((i + 0.5) / count) + by)))
}
