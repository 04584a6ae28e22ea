import type { Duration, Stage, Trip } from '../../../src/model/documents/types.ts'
import { mean } from '../../../src/model/duration/index.ts'
import { withMean } from './durations.ts'

/** The same shape of time with a mean that nobody sets by hand: measured times are scaled too. */
function shrunk(duration: Duration, target: number): Duration {
  if (duration.kind !== 'samples') return withMean(duration, target)
  const factor = target / mean(duration)
  return { kind: 'samples', seconds: duration.seconds.map((seconds) => seconds * factor) }
}

/**
 * A whole trip as the drive and one stage with the time that remains, so that their means add up to the trip's, to
 * 0.01 s. Null where the drive alone takes as long or longer.
 */
export function splitWhole(trip: Trip & { whole: Duration }, drive: number, name: string): Stage[] | null {
  const rest = mean(trip.whole) - drive
  if (rest < 0.005) return null
  return [{ id: 'rest', name, duration: shrunk(trip.whole, rest), after: ['drive'] }]
}

/** A stage cut in two that follow each other and take as long together; what waited for it waits for the second. */
export function cutStage(stages: readonly Stage[], id: string, second: { id: string; name: string }): Stage[] {
  const stage = stages.find((each) => each.id === id)
  if (!stage) return [...stages]
  const half = shrunk(stage.duration, mean(stage.duration) / 2)
  return stages.flatMap((each): Stage[] => {
    const after = each.after.map((before) => (before === id ? second.id : before))
    if (each.id !== id) return [{ ...each, after }]
    // Half of a stage is not what its hardware does any more.
    const { hardware: _, ...own } = stage
    return [
      { ...own, duration: half },
      { ...own, ...second, duration: half, after: [id] },
    ]
  })
}
