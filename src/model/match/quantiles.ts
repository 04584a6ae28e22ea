import { denseOnGrid } from '../duration/grid.ts'
import { type AnyDuration, type Distribution, distributionOf } from '../duration/index.ts'

/**
 * Equally likely values of a distribution, rising: drawing is one look-up, `values[(word * scale) | 0]` for a random word of
 * 32 bits.
 */
export interface Quantiles {
  readonly values: Float64Array
  /** Number of values divided by 2³². */
  readonly scale: number
}

/** Values of a distribution with a density. Each is the mean of its share, so that the mean is kept. */
const shares = 1024

/** Points of the grid, on which a density is summed, to one standard deviation or median, whichever is less. */
const finePoints = 200

export const quantilesOf = (duration: AnyDuration): Quantiles => tabulated(distributionOf(duration))

/** @example tabulated(atomic([3, 5])).values // [3, 5] */
export function tabulated(distribution: Distribution): Quantiles {
  const values = distribution.atoms
    ? Float64Array.from(distribution.atoms, ([value]) => value)
    : meansOfShares(distribution)
  return { values, scale: values.length / 2 ** 32 }
}

function meansOfShares(distribution: Distribution): Float64Array {
  const step = Math.min(Math.sqrt(distribution.variance), distribution.quantile(0.5)) / finePoints
  const { first, mass } = denseOnGrid(distribution, step)
  const out = new Float64Array(shares)
  let share = 0
  let wanted = 1 / shares
  for (let i = 0; i < mass.length; i++) {
    // Each mass is taken as spread evenly over half a step to either side.
    let rest = mass[i] as number
    const width = rest > 0 ? step / rest : 0
    let x = (first + i - 0.5) * step
    while (share < shares - 1 && rest >= wanted) {
      const to = x + wanted * width
      out[share] = (out[share] as number) + (wanted * (x + to)) / 2
      x = to
      rest -= wanted
      share++
      wanted = 1 / shares
    }
    out[share] = (out[share] as number) + rest * (x + (rest * width) / 2)
    wanted -= rest
  }
  return within(
    out.map((sum) => sum * shares),
    distribution.support,
  )
}

/** Half a step beyond an end of the support is put back on it. */
function within(values: Float64Array, [low, high]: readonly [number, number]): Float64Array {
  return values.map((value) => Math.min(high, Math.max(low, value)))
}
