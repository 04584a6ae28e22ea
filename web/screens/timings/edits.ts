import { hardwareLinks } from '../../../src/model/documents/hardware.ts'
import type { HardwareLink, Mechanism } from '../../../src/model/documents/mechanism.ts'
import type { Duration, Robot, Trip } from '../../../src/model/documents/types.ts'
import { mean } from '../../../src/model/duration/index.ts'
import { mechanismAnswer, mechanismDrive, mechanismDuration } from '../../../src/model/timing/index.ts'
import type { Place } from '../../data/difference.ts'
import { valueAt, withValueAt } from '../../data/place.ts'

/** Where in a robot a link stands: a stage, or the drive. */
export const driveAt: Place = ['drive']

export const isDriveAt = (at: Place): boolean => at[0] === 'drive'

export const mechanismById = (robot: Robot, id: string | undefined): Mechanism | undefined =>
  robot.mechanisms?.find((mechanism) => mechanism.id === id)

/** An id that the robot's mechanisms do not have yet. */
export function freeMechanismId(robot: Robot, kind: string): string {
  const taken = new Set((robot.mechanisms ?? []).map(({ id }) => id))
  let number = 1
  while (taken.has(`${kind}-${number}`)) number++
  return `${kind}-${number}`
}

/** Id of the mechanism that a bar of the strip names: a stage of the trip at `trip` in the robot, or the drive. */
export function linkAt(robot: Robot, trip: Place | undefined, stage: string): string | undefined {
  if (stage === 'drive') return robot.drive.hardware?.mechanism
  const found = trip && (valueAt(robot, trip) as Trip | undefined)
  return found && 'stages' in found ? found.stages.find(({ id }) => id === stage)?.hardware?.mechanism : undefined
}

const link = (mechanism: string): HardwareLink => ({ mechanism, follows: true })

/** The robot with one mechanism more, which what stands at the place follows. */
export const withMechanism = (robot: Robot, mechanism: Mechanism, at: Place): Robot =>
  withValueAt(
    { ...robot, mechanisms: [...(robot.mechanisms ?? []), mechanism] },
    [...at, 'hardware'],
    link(mechanism.id),
  )

/** What stands at the place follows a mechanism that is there. */
export const following = (robot: Robot, mechanism: string, at: Place): Robot =>
  withValueAt(robot, [...at, 'hardware'], link(mechanism))

/** A mechanism under another id and name; its input is one of its own. */
export const copied = (mechanism: Mechanism, id: string, name: string): Mechanism =>
  ({ ...mechanism, id, name, input: { ...mechanism.input } }) as Mechanism

/** What names a mechanism: where, under which name, and whether it follows. `name` null: the drive. */
export interface User {
  at: Place
  name: string | null
  follows: boolean
}

/** The stages, and the drive, that name a mechanism. */
export const usersOf = (robot: Robot, id: string): User[] => [
  ...(robot.drive.hardware?.mechanism === id
    ? [{ at: driveAt, name: null, follows: robot.drive.hardware.follows }]
    : []),
  ...hardwareLinks(robot)
    .filter((linked) => linked.link.mechanism === id)
    .map(({ stage, link: { follows }, path }) => ({ at: path, name: stage.name, follows })),
]

/** The robot without a mechanism, and without what named it; times stay as they are. */
export function withoutMechanism(robot: Robot, id: string): Robot {
  const left = (robot.mechanisms ?? []).filter((mechanism) => mechanism.id !== id)
  const unlinked = usersOf(robot, id).reduce((now, { at }) => withValueAt(now, [...at, 'hardware'], undefined), robot)
  return withValueAt(unlinked, ['mechanisms'], left.length > 0 ? left : undefined)
}

/** What a follower has, and what its mechanism gives: mean seconds, or the drive's top speed (m/s). */
export interface Behind extends User {
  mechanism: Mechanism
  has: number
  gives: number
}

/** As far as another machine's rounding may carry a sum of draws. */
const near = (a: number, b: number) => Math.abs(a - b) <= 1e-6 * Math.max(1e-3, Math.abs(a), Math.abs(b))

function nearDuration(a: Duration, b: Duration): boolean {
  if (a.kind !== b.kind) return false
  const [mine, its] = [a, b] as unknown as { [key: string]: unknown }[]
  return Object.entries(mine!).every(([key, value]) => {
    const other = its![key]
    return typeof value === 'number' && typeof other === 'number' ? near(value, other) : value === other
  })
}

/**
 * Followers whose numbers are not those that their mechanism gives now: the file was written elsewhere, or by another
 * version of the model. A mechanism that can not do it leaves the last numbers, and is not among them.
 */
export function behind(robot: Robot): Behind[] {
  return (robot.mechanisms ?? []).flatMap((mechanism) =>
    usersOf(robot, mechanism.id)
      .filter(({ follows }) => follows)
      .flatMap((user): Behind[] => {
        if (user.name === null) return driveBehind(robot, mechanism).map((found) => ({ ...user, mechanism, ...found }))
        const gives = mechanismDuration(mechanism)
        const { duration } = valueAt(robot, user.at) as { duration: Duration }
        if (!gives || nearDuration(duration, gives)) return []
        return [{ ...user, mechanism, has: mean(duration), gives: mean(gives) }]
      }),
  )
}

function driveBehind({ drive }: Robot, mechanism: Mechanism): { has: number; gives: number }[] {
  const gives = mechanismDrive(mechanism)
  if (!gives) return []
  const same = (['topSpeed', 'acceleration', 'deceleration'] as const).every((key) => near(gives[key], drive[key]))
  return same ? [] : [{ has: drive.topSpeed, gives: gives.topSpeed }]
}

/** The robot whose followers take over what their mechanisms give now: an input that is a new object is followed. */
export function takenOver(robot: Robot): Robot {
  const stale = new Set(behind(robot).map(({ mechanism }) => mechanism.id))
  return {
    ...robot,
    mechanisms: (robot.mechanisms ?? []).map((mechanism) =>
      stale.has(mechanism.id) ? copied(mechanism, mechanism.id, mechanism.name) : mechanism,
    ),
  }
}

/** By how much a stage's own time differs from its hardware's (s, mean); null where the hardware can not do it. */
export function ownLessHardware(duration: Duration, mechanism: Mechanism): number | null {
  const gives = mechanismAnswer(mechanism).possible ? mechanismDuration(mechanism) : null
  return gives ? mean(duration) - mean(gives) : null
}
