import { quantileOf } from '../statistics/described.ts'
import type { Estimate, Interval } from './types.ts'

export interface Summary {
  ownWeight: number
  /** Exact, where it is known. */
  mean?: number
  /** Draws of the next match, made when they are asked for. */
  next?: () => Float64Array | null
}

export const meanOfDraws = (draws: Float64Array): number => {
  let sum = 0
  for (let d = 0; d < draws.length; d++) sum += draws[d] as number
  return sum / draws.length
}

const between = (level: number, sorted: Float64Array): Interval => [
  quantileOf(sorted, (1 - level) / 2),
  quantileOf(sorted, (1 + level) / 2),
]

/** An estimate read from draws of the expectation. */
export function estimateOf(draws: Float64Array, { ownWeight, mean, next }: Summary): Estimate {
  const sorted = draws.toSorted()
  let next80: Interval | null | undefined
  return {
    mean: mean ?? meanOfDraws(draws),
    interval80: between(0.8, sorted),
    interval95: between(0.95, sorted),
    get next80() {
      if (next80 === undefined) {
        const drawn = next?.() ?? null
        next80 = drawn && between(0.8, drawn.toSorted())
      }
      return next80
    },
    ownWeight,
  }
}
