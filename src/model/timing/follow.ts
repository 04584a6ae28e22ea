import { hardwareLinks } from '../documents/hardware.ts'
import type { Mechanism } from '../documents/mechanism.ts'
import type { Duration, Robot, Stage, Trip } from '../documents/types.ts'
import { ModelError } from '../errors.ts'
import type { Answers } from './answers.ts'
import { timing } from './calculate.ts'
import { inputFaults } from './inputFaults.ts'

/** What a mechanism answers; the message where its numbers contradict each other, or its motion can not be followed. */
export type MechanismAnswer = Answers[Mechanism['calculator']] | { possible: false; refused: string }

const known = new WeakMap<object, MechanismAnswer>()

/** The answer of a mechanism's calculator, kept as long as its input is the same object. */
export function mechanismAnswer({ calculator, input }: Mechanism): MechanismAnswer {
  const found = known.get(input)
  if (found) return found
  const fresh = ask(calculator, input)
  known.set(input, fresh)
  return fresh
}

function ask(calculator: Mechanism['calculator'], input: Mechanism['input']): MechanismAnswer {
  if (inputFaults(input).length > 0) return { possible: false, refused: 'Some of its numbers contradict each other' }
  try {
    return timing(calculator, input as never)
  } catch (error) {
    if (error instanceof ModelError) return { possible: false, refused: error.message }
    throw error
  }
}

/** The Duration that a mechanism gives to a stage; null where it can not do it. */
export function mechanismDuration(mechanism: Mechanism): Duration | null {
  const answer = mechanismAnswer(mechanism)
  return answer.possible ? answer.duration : null
}

/** Numbers for a robot's drive; null where the mechanism is no drive, can not do it, or has no legs to fit them to. */
export function mechanismDrive(mechanism: Mechanism): Pick<Robot['drive'], DriveNumber> | null {
  if (mechanism.calculator !== 'drive') return null
  const answer = mechanismAnswer(mechanism) as Answers['drive'] | { possible: false }
  const fitted = answer.possible ? answer.quantities.trapezoid : null
  if (!fitted) return null
  return { topSpeed: fitted.topSpeed, acceleration: fitted.acceleration, deceleration: fitted.deceleration }
}

type DriveNumber = 'topSpeed' | 'acceleration' | 'deceleration'
const driveNumbers: readonly DriveNumber[] = ['topSpeed', 'acceleration', 'deceleration']

/**
 * The live link between hardware and times. After an edit, what follows a mechanism gets its numbers where the mechanism
 * changed or the link is new; and what was given other numbers by the edit follows no longer. A mechanism that can not do
 * it leaves the last numbers. Parts that the edit did not touch must be the same objects.
 */
export function followHardware(before: Robot, after: Robot): Robot {
  if (before === after || !after.mechanisms) return after
  const [old, now] = [byId(before), byId(after)]
  const moved = (id: string) => old.get(id)?.input !== now.get(id)?.input
  const earlier = earlierStages(before)
  const followed = (stage: Stage, place: string): Stage => {
    const { hardware: link } = stage
    if (!link?.follows) return stage
    const mechanism = now.get(link.mechanism)
    const last = earlier.get(place)
    const linked = last?.hardware?.follows === true && last.hardware.mechanism === link.mechanism
    if (linked && !moved(link.mechanism)) {
      if (last.duration === stage.duration) return stage
      return { ...stage, hardware: { ...link, follows: false } }
    }
    const duration = mechanism && mechanismDuration(mechanism)
    return duration ? { ...stage, duration } : stage
  }
  return mapStages({ ...after, drive: followedDrive(before.drive, after.drive, { now, moved }) }, followed)
}

const byId = (robot: Robot) => new Map((robot.mechanisms ?? []).map((mechanism) => [mechanism.id, mechanism]))

/** By the trip's place and the stage's own id, because stages change places. */
const earlierStages = (robot: Robot): Map<string, Stage> =>
  new Map(hardwareLinks(robot).map(({ stage, path }) => [`${path.slice(0, -2).join('/')}/${stage.id}`, stage] as const))

function followedDrive(
  before: Robot['drive'],
  after: Robot['drive'],
  { now, moved }: { now: Map<string, Mechanism>; moved(id: string): boolean },
): Robot['drive'] {
  const { hardware: link } = after
  if (!link?.follows) return after
  const linked = before.hardware?.follows === true && before.hardware.mechanism === link.mechanism
  if (linked && !moved(link.mechanism)) {
    if (driveNumbers.every((key) => before[key] === after[key])) return after
    return { ...after, hardware: { ...link, follows: false } }
  }
  const mechanism = now.get(link.mechanism)
  const numbers = mechanism && mechanismDrive(mechanism)
  return numbers ? { ...after, ...numbers } : after
}

/** A copy with other stages; trips of which no stage changed stay the same objects. */
function mapStages(robot: Robot, change: (stage: Stage, place: string) => Stage): Robot {
  const put = <T extends Trip>(trip: T, place: string): T => {
    if (!('stages' in trip)) return trip
    const stages = mapSame(trip.stages, (stage) => change(stage, `${place}/${stage.id}`))
    return stages === trip.stages ? trip : { ...trip, stages }
  }
  const { collect, score, finish } = robot
  return {
    ...robot,
    collect: mapValues(collect, (trip, id) => put(trip, `collect/${id}`)),
    score: mapValues(score, (entries, id) => mapSame(entries, (trip, index) => put(trip, `score/${id}/${index}`))),
    finish: mapValues(finish, (trip, id) => put(trip, `finish/${id}`)),
  }
}

function mapSame<T>(list: T[], change: (each: T, index: number) => T): T[] {
  const changed = list.map(change)
  return changed.every((each, i) => each === list[i]) ? list : changed
}

function mapValues<T>(object: { [key: string]: T }, change: (each: T, key: string) => T): { [key: string]: T } {
  const changed = Object.entries(object).map(([key, value]) => [key, change(value, key)] as const)
  return changed.every(([key, value]) => value === object[key]) ? object : Object.fromEntries(changed)
}
