import { legOf } from '../../documents/overrides.ts'
import type { Duration, Robot, Stage, Trip } from '../../documents/types.ts'
import { distributionOf } from '../../duration/index.ts'
import type { FieldLegRef } from './types.ts'

/** Least that a stage is left with (s): no stage takes no time at all. */
export const least = 0.05

/** A Duration that lasts longer by some seconds on average and varies as before; shorter it can get to a twentieth of a second. */
export function shiftedBy(duration: Duration, seconds: number): Duration {
  const moved = (value: number) => Math.max(0, rounded(value + seconds))
  switch (duration.kind) {
    case 'fixed':
      return { kind: 'fixed', seconds: moved(duration.seconds) }
    case 'range':
      return { kind: 'range', low: moved(duration.low), likely: moved(duration.likely), high: moved(duration.high) }
    case 'samples':
      return { kind: 'samples', seconds: duration.seconds.map(moved) }
    case 'lognormal': {
      const { mean, variance } = distributionOf(duration)
      const now = Math.max(least, mean + seconds)
      // Its own spread is kept in seconds, as far as a log-normal of that mean can have it.
      const sigma = Math.min(Math.log(4), Math.sqrt(Math.log1p(variance / now ** 2)))
      return { kind: 'lognormal', median: rounded(now * Math.exp(-(sigma ** 2) / 2)), spread: rounded(Math.exp(sigma)) }
    }
  }
}

const rounded = (value: number) => Math.round(value * 10_000) / 10_000

/** A trip with one of its stages moved; null: the time of the whole. A stage that followed its hardware does so no longer. */
export function movedTrip<Of extends Trip>(trip: Of, stage: string | null, seconds: number): Of {
  if ('whole' in trip) return stage === null ? { ...trip, whole: shiftedBy(trip.whole, seconds) } : trip
  const stages = trip.stages.map((each): Stage => {
    if (each.id !== stage) return each
    const { hardware } = each
    return {
      ...each,
      duration: shiftedBy(each.duration, seconds),
      ...(hardware && { hardware: { ...hardware, follows: false } }),
    }
  })
  return { ...trip, stages }
}

/** A robot with a stage of a leg moved by some seconds. What it has not is left out. */
export function withShift(
  robot: Robot,
  { leg, stage, seconds }: { leg: FieldLegRef } & { stage: string | null; seconds: number },
): Robot {
  if (!legOf(robot, leg)) return robot
  if (leg.kind === 'collect') {
    const trip = movedTrip(robot.collect[leg.source]!, stage, seconds)
    return { ...robot, collect: { ...robot.collect, [leg.source]: trip } }
  }
  const entries = robot.score[leg.goal]!.map((entry, index) =>
    index === leg.entry ? movedTrip(entry, stage, seconds) : entry,
  )
  return { ...robot, score: { ...robot.score, [leg.goal]: entries } }
}
