import type { Duration, Trip } from '../../../src/model/documents/types.ts'
import { mean } from '../../../src/model/duration/index.ts'
import { schedule } from '../../../src/model/leg/criticality.ts'
import { networkOf } from '../../../src/model/leg/network.ts'
import type { LegReport } from '../../../src/model/leg/types.ts'

const scheduled = (trip: Trip & { stages: unknown }, load: number, drive: number) => {
  const { stages } = trip as Extract<Trip, { stages: unknown }>
  const network = networkOf(stages)
  const means = [drive, ...stages.map(({ duration, each }) => mean(duration) * (each ? load : 1))]
  return { network, means, times: schedule(network, means) }
}

const timesOf = (trip: Trip): Duration[] =>
  'whole' in trip ? [trip.whole] : trip.stages.map(({ duration }) => duration)

/**
 * A leg's report at the times that its trip has now, until the model's own is there: bars and floats are those of the
 * trip's network; how often a stage is critical is still what it was. `before` is the trip that the report is of.
 */
export function presentReport(report: LegReport, before: Trip, now: Trip, load: number): LegReport {
  if (before === now) return report
  // Numbers that contradict each other, as while a range is typed, have no mean.
  if (!timesOf(now).every((duration) => Number.isFinite(mean(duration)))) return report
  if ('whole' in before && 'whole' in now)
    return { ...report, mean: Math.max(0, report.mean + mean(now.whole) - mean(before.whole)) }
  if (!('stages' in before && 'stages' in now)) return report
  const known = new Map(report.stages.map((stage) => [stage.id, stage]))
  const drive = known.get('drive')?.mean ?? 0
  try {
    const was = scheduled(before, load, drive).times.length
    const { network, means, times } = scheduled(now, load, drive)
    const stages = network.ids.map((id, index) => ({
      id,
      mean: means[index]!,
      earliestStart: times.earliestStart[index]!,
      earliestFinish: times.earliestFinish[index]!,
      latestStart: times.latestStart[index]!,
      latestFinish: times.latestFinish[index]!,
      float: Math.max(0, times.latestStart[index]! - times.earliestStart[index]!),
      criticality: known.get(id)?.criticality ?? 0,
    }))
    return { ...report, mean: report.mean + times.length - was, stages }
  } catch {
    // A trip that can not be scheduled is shown as it last could be; what is wrong with it stands beside it.
    return report
  }
}
