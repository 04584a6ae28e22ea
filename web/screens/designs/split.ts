import type { Duration, Stage, Trip } from '../../../src/model/documents/types.ts'
import { mean } from '../../../src/model/duration/index.ts'
import { withMean } from './durations.ts'

export interface SplitTrip {
  stages: Stage[]
  /** By how much the drive alone takes longer than the whole trip was said to (s); 0 where the sum is kept. */
  over: number
}

/** The same shape of time with a mean that nobody sets by hand: measured times are scaled too. */
function shrunk(duration: Duration, target: number): Duration {
  if (duration.kind !== 'samples') return withMean(duration, target)
  const factor = target / mean(duration)
  return { kind: 'samples', seconds: duration.seconds.map((seconds) => seconds * factor) }
}

/**
 * A whole trip as the drive and one stage with the time that remains, so that their means add up to the trip's.
 * Where the drive alone takes longer, nothing remains, and `over` says by how much the sum has grown.
 */
export function splitWhole(trip: Trip & { whole: Duration }, drive: number, name: string): SplitTrip {
  const rest = mean(trip.whole) - drive
  const duration: Duration = rest > 0 ? shrunk(trip.whole, rest) : { kind: 'fixed', seconds: 0 }
  return { stages: [{ id: 'rest', name, duration, after: ['drive'] }], over: Math.max(0, -rest) }
}

/** A stage cut in two that follow each other and take as long together; what waited for it waits for the second. */
export function cutStage(stages: readonly Stage[], id: string, second: { id: string; name: string }): Stage[] {
  const stage = stages.find((each) => each.id === id)
  if (!stage) return [...stages]
  const half = shrunk(stage.duration, mean(stage.duration) / 2)
  return stages.flatMap((each): Stage[] => {
    const after = each.after.map((before) => (before === id ? second.id : before))
    if (each.id !== id) return [{ ...each, after }]
    return [
      { ...stage, duration: half },
      { ...stage, ...second, duration: half, after: [id] },
    ]
  })
}
