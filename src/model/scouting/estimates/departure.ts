import type { SeenTeleop } from '../seen/index.ts'
import type { Weighted } from './weights.ts'

/** When a team departs for its finish, as time left (s): a mean and its variance. */
export interface Departing {
  mean: number
  variance: number
  ownWeight: number
  /** What is usual at the event, which the rest is taken from. */
  eventMean: number
}

/** Where nobody has timed a departure, half of the endgame is taken: common practice, without a source. */
export const assumedShare = 0.5

/** Times left at departures, those of robots that play to the end 0; null where a robot departed and nobody said when. */
export function departureIn({ departed }: SeenTeleop): number | null {
  return departed === 'unknown' ? null : departed === 'never' ? 0 : departed
}

/**
 * Usual departures of all teams: means drawn to the event's by the ratio of the spreads within and between teams (method
 * of moments).
 */
export function departures(teams: readonly (readonly Weighted[])[], endgame: number): Departing[] {
  const seen = teams.map((matches) =>
    matches.flatMap(({ seen: { teleop }, weight }) => {
      const at = teleop ? departureIn(teleop) : null
      return at === null || weight <= 0 ? [] : [{ at, weight }]
    }),
  )
  const sums = seen.map((own) => {
    const n = own.reduce((sum, { weight }) => sum + weight, 0)
    const mean = n > 0 ? own.reduce((sum, { at, weight }) => sum + weight * at, 0) / n : 0
    return {
      n,
      mean,
      squares: own.reduce((sum, { at, weight }) => sum + weight * (at - mean) ** 2, 0),
      count: own.length,
    }
  })
  const known = sums.filter(({ n }) => n > 0)
  if (known.length === 0) {
    const anyUnknown = teams.some((own) => own.some(({ seen: { teleop } }) => teleop?.departed === 'unknown'))
    const mean = anyUnknown ? assumedShare * endgame : 0
    return teams.map(() => ({ mean, variance: anyUnknown ? (endgame / 6) ** 2 : 0, ownWeight: 0, eventMean: mean }))
  }
  const event = known.reduce((sum, { mean }) => sum + mean, 0) / known.length
  const free = known.reduce((sum, { count }) => sum + count - 1, 0)
  const within =
    free > 0 ? Math.max(1, known.reduce((sum, { squares }) => sum + squares, 0) / free) : (endgame / 6) ** 2
  const inverse = known.reduce((sum, { n }) => sum + 1 / n, 0) / known.length
  const apart = known.reduce((sum, { mean }) => sum + (mean - event) ** 2, 0) / Math.max(1, known.length - 1)
  const between = Math.max(1, apart - within * inverse)
  return sums.map(({ n, mean }) => {
    const worth = within / between
    return {
      mean: (n * mean + worth * event) / (n + worth),
      variance: within / (n + worth),
      ownWeight: n / (n + worth),
      eventMean: event,
    }
  })
}
