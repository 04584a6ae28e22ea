import type { TeamMatch } from '../seen/index.ts'
import { defaultDiscount } from './settings.ts'

/** An own match with how much it counts. */
export interface Weighted {
  seen: TeamMatch
  weight: number
  /** Events and changes of the robot between it and the next match. */
  steps: number
  /** Whether it is of this event. */
  here: boolean
}

export interface Weighing {
  /** In own matches; infinite: all count alike. */
  halfLife: number
  /** Of an earlier event's matches, and of those before a change. */
  discount: number
}

export const evenly: Weighing = { halfLife: Number.POSITIVE_INFINITY, discount: defaultDiscount }

/**
 * How much a team's matches count for its next one: 2^(−age / half-life) with the age in own matches, times the discount for
 * each step between then and now, a change of the robot or another event.
 *
 * @param own of this event, in the order of play
 * @param earlier of earlier events, in their order, each with how many events ago and how many changes before this one's first
 * @param era changes of the robot at this event so far
 */
export function weighted(
  own: readonly TeamMatch[],
  { earlier = [], era, weighing }: { earlier?: readonly EarlierMatch[]; era: number; weighing: Weighing },
): Weighted[] {
  const { halfLife, discount } = weighing
  const all = [
    ...earlier.map(({ seen, steps }) => ({ seen, steps: steps + era })),
    ...own.map((seen) => ({ seen, steps: Math.max(0, era - seen.era) })),
  ]
  return all.map(({ seen, steps }, index) => ({
    seen,
    weight: 2 ** (-(all.length - 1 - index) / halfLife) * discount ** steps,
    steps,
    here: index >= earlier.length,
  }))
}

/** A match of an earlier event. `steps`: events and changes between it and this event, at least 1. */
export interface EarlierMatch {
  seen: TeamMatch
  steps: number
}
