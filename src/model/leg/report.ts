import { refusal } from '../documents/sentences.ts'
import type { Game, Robot, Stage, Trip } from '../documents/types.ts'
import { placeOf, travel } from '../field/index.ts'
import { ownTime } from '../field/ownTime.ts'
import type { planSentences } from '../plan/sentences.ts'
import { LegBuilder, type LegSpec } from './builder.ts'
import { criticalities, schedule } from './criticality.ts'
import { networkOf } from './network.ts'
import { meanOf, notAtOnce, type Pmf, quantileOf, regrid, varianceOf } from './pmf.ts'
import type { LegReport, LegRequest, StageReport } from './types.ts'

/** Fine grid and the grid of the answer (s). */
const fineStep = 0.01
const step = 0.1

/** What is less likely than this is left out of the listed distribution. */
const unlisted = 1e-9

/**
 * One leg in full: distribution, percentiles, when its pieces count, and each stage's times, float and criticality.
 * Mean, sd and percentiles are those of the fine distribution; the listed one lies on the grid of 0.1 s.
 * @throws ModelError 'invalid' for ids that are not there, 'unreachable' where there is no way
 */
export function legReport(game: Game, robot: Robot, leg: LegRequest): LegReport {
  const { trip, load, tries } = tripOf(game, robot, leg)
  const way = 'whole' in trip ? null : travel(game, robot, leg.from, leg.spot)
  const route = way && { length: way.length, seconds: ownTime(robot.drive, leg.from, leg.spot) ?? way.seconds }
  const builder = new LegBuilder(fineStep)
  const spec: LegSpec = {
    trip,
    load,
    drive: route && { seconds: route.seconds, pace: robot.drive.pace },
    ...(tries ? { tries } : {}),
  }
  const { end: sum, pieces } = builder.times(spec)
  const end = sum.fine
  return {
    mean: meanOf(end) * fineStep,
    sd: Math.sqrt(varianceOf(end)) * fineStep,
    p10: quantileOf(end, 0.1) * fineStep,
    p50: quantileOf(end, 0.5) * fineStep,
    p90: quantileOf(end, 0.9) * fineStep,
    distribution: listed(notAtOnce(regrid(end, Math.round(step / fineStep)))),
    ...(pieces && leg.kind === 'score'
      ? { pieces: pieces.map((piece) => ({ mean: meanOf(piece.fine) * fineStep })) }
      : {}),
    drive: route,
    stages: 'stages' in trip ? stageReports(trip.stages, builder.stageTimes(spec)) : [],
  }
}

function tripOf(game: Game, robot: Robot, leg: LegRequest): { trip: Trip; load: number; tries?: LegSpec['tries'] } {
  known(game, leg.from, 'from')
  if (leg.kind === 'collect') {
    spotOf(game.sources, leg.source, leg.spot, 'source')
    const trip = robot.collect[leg.source]
    if (!trip) throw missing('source', ['canNot', { what: 'collect', id: leg.source }])
    return { trip, load: leg.load, tries: { success: trip.success, retry: trip.retry } }
  }
  if (leg.kind === 'finish') {
    spotOf(game.finishes, leg.finish, leg.spot, 'finish')
    const trip = robot.finish[leg.finish]
    if (!trip) throw missing('finish', ['canNot', { what: 'finish', id: leg.finish }])
    return { trip, load: 1 }
  }
  spotOf(game.goals, leg.goal, leg.spot, 'goal')
  const trip = robot.score[leg.goal]?.[leg.entry]
  if (!trip) throw missing('entry', ['noEntryFor', { entry: leg.entry, goal: leg.goal }])
  if (trip.spots !== 'any' && !trip.spots.includes(leg.spot))
    throw missing('spot', ['notFromSpot', { entry: leg.entry, spot: leg.spot }])
  return { trip, load: leg.load }
}

const missing = <Code extends keyof typeof planSentences>(
  field: string,
  said: [code: Code, parts: Parameters<(typeof planSentences)[Code]>[0]],
) => refusal<Code>('invalid', said, ['leg', field])

function known(game: Game, id: string, field: string): void {
  if (!placeOf(game, id)) throw missing(field, ['legFromNowhere', { id }])
}

function spotOf(
  places: readonly { id: string; spots: readonly { id: string }[] }[],
  id: string,
  spot: string,
  kind: 'source' | 'goal' | 'finish',
): void {
  const place = places.find((other) => other.id === id)
  if (!place) throw missing(kind, ['legToNowhere', { noun: kind, id }])
  if (!place.spots.some((other) => other.id === spot)) throw missing('spot', ['legToNoSpot', { place: id, spot }])
}

function listed(times: Pmf): [number, number][] {
  const out: [number, number][] = []
  for (let i = 0; i < times.mass.length; i++) {
    const p = times.mass[i] as number
    if (p > unlisted) out.push([Math.round((times.first + i) * step * 10) / 10, p])
  }
  return out
}

/** Earliest and latest times at mean durations, float, and criticality. */
function stageReports(stages: readonly Stage[], times: readonly Pmf[]): StageReport[] {
  const network = networkOf(stages)
  const means = times.map((time) => meanOf(time) * fineStep)
  const plan = schedule(network, means)
  const critical = criticalities(network, times)
  return network.ids.map((id, i) => ({
    id,
    mean: means[i] as number,
    earliestStart: plan.earliestStart[i] as number,
    earliestFinish: plan.earliestFinish[i] as number,
    latestStart: plan.latestStart[i] as number,
    latestFinish: plan.latestFinish[i] as number,
    float: Math.max(0, (plan.latestStart[i] as number) - (plan.earliestStart[i] as number)),
    criticality: critical[i] as number,
  }))
}
