import { quantilesOf } from '../statistics/described.ts'
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

/** An estimate read from draws of the expectation. */
export function estimateOf(draws: Float64Array, { ownWeight, mean, next }: Summary): Estimate {
  const [low95, low80, high80, high95] = quantilesOf(draws, [0.025, 0.1, 0.9, 0.975]) as [
    number,
    number,
    number,
    number,
  ]
  let next80: Interval | null | undefined
  return {
    mean: mean ?? meanOfDraws(draws),
    interval80: [low80, high80],
    interval95: [low95, high95],
    get next80() {
      if (next80 === undefined) {
        const drawn = next?.() ?? null
        next80 = drawn && (quantilesOf(drawn, [0.1, 0.9]) as [number, number])
      }
      return next80
    },
    ownWeight,
  }
}
