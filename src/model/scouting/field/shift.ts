import { brent } from '../../compare/brent.ts'
import { legOf } from '../../documents/overrides.ts'
import type { Duration, Robot, Stage, Trip } from '../../documents/types.ts'
import { distributionOf } from '../../duration/index.ts'
import { LegBuilder, type LegSpec } from '../../leg/builder.ts'
import { meanOf } from '../../leg/pmf.ts'
import type { FieldLegRef, StageShiftNeeded } from './types.ts'
import { fineStep } from './ways.ts'

/** Least that a stage is left with (s): no stage takes no time at all. */
const least = 0.05

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
function movedTrip<Of extends Trip>(trip: Of, stage: string | null, seconds: number): Of {
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

/** What of a leg was driven: where from and to, with its share. */
export interface Driven {
  spec: LegSpec
  share: number
}

/**
 * By how much each stage of a leg would have to last longer for the leg to last `longer` seconds more on average, over what was
 * driven. A stage beside the drive has to outlast it first, one that is done once per piece moves the leg by as much for each.
 *
 * @param factor of form on all times
 */
export function shiftsFor(driven: readonly Driven[], longer: number, factor: number): StageShiftNeeded[] {
  const [first] = driven
  if (!first) return []
  const { trip } = first.spec
  const builder = new LegBuilder(fineStep)
  const total = driven.reduce((sum, { share }) => sum + share, 0)
  const mean = (stage: string | null, seconds: number) =>
    driven.reduce((sum, { spec, share }) => {
      const moved = { ...spec, trip: movedTrip(spec.trip, stage, seconds) }
      return sum + (share / total) * meanOf(builder.times(moved).end.fine) * fineStep * factor
    }, 0)
  const stages: [string | null, Duration][] =
    'whole' in trip ? [[null, trip.whole]] : trip.stages.map(({ id, duration }) => [id, duration])
  return stages.map(([stage, duration]) => {
    const before = mean(stage, 0)
    const off = (seconds: number) => mean(stage, seconds) - before - longer
    return { stage, seconds: solved(off, longer, least - distributionOf(duration).mean) }
  })
}

const [width, most] = [0.01, 60]

/** @param lowest below it the stage would take no time */
function solved(off: (seconds: number) => number, longer: number, lowest: number): number | null {
  if (Math.abs(longer) < width) return 0
  let [low, high] = longer > 0 ? [0, longer] : [Math.max(lowest, 2 * longer), 0]
  if (longer > 0) {
    while (off(high) < 0) {
      if (high >= most) return null
      ;[low, high] = [high, Math.min(most, 2 * high)]
    }
  } else {
    while (off(low) > 0) {
      if (low <= lowest) return null
      ;[low, high] = [Math.max(lowest, 2 * low), low]
    }
  }
  const { at } = brent(off, { low, high, valueLow: off(low), valueHigh: off(high) }, width)
  return Math.round(at * 100) / 100
}
