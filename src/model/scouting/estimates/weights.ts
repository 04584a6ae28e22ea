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
  /** Of matches before a change of the robot, and of an earlier event's where nothing else is said of these. */
  discount: number
  /** Of an earlier event's matches. */
  earlier?: number
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
  const all = [
    ...earlier.map(({ seen, steps }) => ({ seen, steps: steps + era })),
    ...own.map((seen) => ({ seen, steps: Math.max(0, era - seen.era) })),
  ]
  return all.map(({ seen, steps }, index) => {
    const here = index >= earlier.length
    return { seen, weight: weightAt({ age: all.length - 1 - index, steps, here }, weighing), steps, here }
  })
}

/** What a match counts after so many further own ones and so many steps; the last step of one of another event is that event's end. */
export function weightAt(
  { age, steps, here }: { age: number; steps: number; here: boolean },
  { halfLife, discount, earlier = discount }: Weighing,
): number {
  const cut = here || steps === 0 ? discount ** steps : earlier * discount ** (steps - 1)
  return 2 ** (-age / halfLife) * cut
}

/** A match of an earlier event. `steps`: events and changes between it and this event, at least 1. */
export interface EarlierMatch {
  seen: TeamMatch
  steps: number
}
