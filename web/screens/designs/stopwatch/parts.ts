import type { TimedLeg, TimedPart } from '../../../../src/model/documents/timing.ts'
import type { Duration, Game, Robot, Trip } from '../../../../src/model/documents/types.ts'
import type { Place } from '../../../data/difference.ts'
import { valueAt } from '../../../data/place.ts'
import { placeName } from '../../../words/actions.ts'
import { words } from '../../../words/catalogue.ts'
import { endsOf } from './drives.ts'

/** Something of a design that can be timed. */
export interface Timed {
  /** Unique in the design, and what an address asks for. */
  key: string
  leg: TimedLeg
  part: TimedPart
  legName: string
  name: string
  /** Where its Duration stands, from the design's root, with the stage's index as it is now; null for a drive, which has none. */
  place: Place | null
  /** For a drive: where else it may begin and end. */
  ends?: { from: string[]; to: string[] }
}

const placeOfLeg = (leg: TimedLeg): Place =>
  leg.kind === 'collect'
    ? ['robot', 'collect', leg.source]
    : leg.kind === 'score'
      ? ['robot', 'score', leg.goal, leg.entry]
      : ['robot', 'finish', leg.finish]

export const timedKey = (leg: TimedLeg, part: TimedPart): string =>
  [
    ...placeOfLeg(leg).slice(1),
    part.kind,
    ...(part.kind === 'stage' ? [part.stage] : part.kind === 'drive' ? [part.from, part.to] : []),
  ].join('/')

/** Where the Duration of a part stands in a robot; null where it has none (any more). */
export function timedPlace(robot: Robot, leg: TimedLeg, part: TimedPart): Place | null {
  const place = placeOfLeg(leg)
  const trip = valueAt({ robot }, place) as (Trip & { retry?: Duration | null }) | undefined
  if (!trip) return null
  if (part.kind === 'retry') return trip.retry ? [...place, 'retry'] : null
  if (part.kind === 'whole') return 'whole' in trip ? [...place, 'whole'] : null
  if (part.kind === 'drive') return null
  const index = 'stages' in trip ? trip.stages.findIndex(({ id }) => id === part.stage) : -1
  return index < 0 ? null : [...place, 'stages', index, 'duration']
}

/**
 * All that can be timed of a design: each stage, each leg that is given whole, repeated tries, and the drive of each leg.
 * `asked`: the key of a drive between other ends than the usual ones.
 */
export function timedParts(game: Game, robot: Robot, asked: string | null = null): Timed[] {
  const names = words().strip.legs
  const several = words().designs.can.entry
  const legs: { leg: TimedLeg; name: string; trip: Trip }[] = [
    ...Object.entries(robot.collect).map(([source, trip]) => ({
      leg: { kind: 'collect' as const, source },
      name: names.collect(placeName(game, source)),
      trip,
    })),
    ...Object.entries(robot.score).flatMap(([goal, entries]) =>
      entries.map((trip, entry) => ({
        leg: { kind: 'score' as const, goal, entry },
        name: names.score(entries.length > 1 ? several(placeName(game, goal), entry + 1) : placeName(game, goal)),
        trip,
      })),
    ),
    ...Object.entries(robot.finish).map(([finish, trip]) => ({
      leg: { kind: 'finish' as const, finish },
      name: names.finish(placeName(game, finish)),
      trip,
    })),
  ]
  return legs.flatMap(({ leg, name, trip }) => {
    const texts = words().stopwatch.parts
    const parts: { part: TimedPart; name: string }[] =
      'whole' in trip
        ? [{ part: { kind: 'whole' }, name: texts.whole }]
        : trip.stages.map((stage) => ({ part: { kind: 'stage', stage: stage.id }, name: stage.name }))
    if ('retry' in trip && trip.retry) parts.push({ part: { kind: 'retry' }, name: texts.retry })
    const ends = endsOf(game, robot, leg, trip)
    const drives = ends
      ? [{ ...drive(leg, ends, asked), name: texts.drive, leg, legName: name, place: null, ends }]
      : []
    const others = parts.map((one) => ({
      ...one,
      key: timedKey(leg, one.part),
      leg,
      legName: name,
      place: timedPlace(robot, leg, one.part),
    }))
    return [...drives, ...others]
  })
}

/** The drive of a leg: between the ends asked for, or the usual ones. */
function drive(leg: TimedLeg, { from, to }: { from: string[]; to: string[] }, asked: string | null) {
  const all = to.flatMap((end) => from.filter((start) => start !== end).map((start) => ({ from: start, to: end })))
  const parts = all.map((ends) => ({ kind: 'drive' as const, ...ends }))
  const part = parts.find((one) => timedKey(leg, one) === asked) ?? parts[0]!
  return { part, key: timedKey(leg, part) }
}

/** FNV-1a, 32 bits: only to keep an id short. */
const hash = (text: string): string => {
  let value = 0x811c9dc5
  for (const character of text) value = Math.imul(value ^ character.codePointAt(0)!, 0x01000193)
  return (value >>> 0).toString(36)
}

/** The id of the record of timings: the same on every phone, so that all times of a part come together. */
export function timingId(design: string, leg: TimedLeg, part: TimedPart): string {
  const whole = `${design}.${timedKey(leg, part).replaceAll('/', '.')}`
  return whole.length <= 100 ? whole : `${whole.slice(0, 88)}-${hash(whole)}`
}
