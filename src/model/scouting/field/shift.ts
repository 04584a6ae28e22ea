import { brent } from '../../compare/brent.ts'
import type { Duration } from '../../documents/types.ts'
import { distributionOf } from '../../duration/index.ts'
import { LegBuilder, type LegSpec } from '../../leg/builder.ts'
import { meanOf } from '../../leg/pmf.ts'
import { least, movedTrip } from './moved.ts'
import type { StageShiftNeeded } from './types.ts'
import { fineStep } from './ways.ts'

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
