import { hardwareLinks, type LinkedStage } from '../../documents/hardware.ts'
import type { Option, Robot } from '../../documents/types.ts'
import { remark } from '../answer/remark.ts'
import { followHardware, mechanismAnswer, mechanismDrive } from '../follow.ts'
import type { Remark } from '../types.ts'
import { type Gearing, withGearing } from './gearing.ts'

/** What of a robot follows a mechanism, so that another gearing changes the match. */
export interface Followers {
  stages: LinkedStage[]
  drive: boolean
}

/** A drive only follows where its mechanism has legs to fit it to. */
export function followersOf(robot: Robot, id: string): Followers {
  const follows = (link: { mechanism: string; follows: boolean } | undefined) =>
    link?.follows === true && link.mechanism === id
  const mechanism = robot.mechanisms?.find((each) => each.id === id)
  const fitted = mechanism?.calculator === 'drive' && mechanism.input.legs !== undefined
  return {
    stages: hardwareLinks(robot).filter(({ link }) => follows(link)),
    drive: fitted && follows(robot.drive.hardware),
  }
}

/** Expected points of the match with one gearing; null where the mechanism can not do it with that, and why. */
export type PointsAt = { points: number; why: null } | { points: null; why: Remark }

/**
 * Expected points of an option with a mechanism of its robot geared otherwise: what follows the mechanism gets its Duration,
 * spreads of the input included, or its drive numbers; all else stays.
 *
 * @param planner whose grid of time the points are of: those of one planner can be compared to hundredths
 * @throws ModelError as a plan does
 */
export function pointsAt(
  planner: { value(option: Option): number },
  { option, mechanism: id }: { option: Option; mechanism: string },
  gearing: Gearing,
): PointsAt {
  const { robot } = option
  const mechanisms = (robot.mechanisms ?? []).map((each) => (each.id === id ? withGearing(each, gearing) : each))
  const mechanism = mechanisms.find((each) => each.id === id)
  const why = mechanism ? whyNot(robot, mechanism) : remark('noMechanism', 'The robot has no such mechanism')
  if (why) return { points: null, why }
  const geared = followHardware(robot, { ...robot, mechanisms })
  return { points: planner.value({ ...option, robot: geared }), why: null }
}

function whyNot(robot: Robot, mechanism: NonNullable<Robot['mechanisms']>[number]): Remark | null {
  const answer = mechanismAnswer(mechanism)
  if (!answer.possible) return 'why' in answer ? answer.why : remark('notFollowed', answer.refused)
  if (!followersOf(robot, mechanism.id).drive || mechanismDrive(mechanism)) return null
  return remark('noDriveNumbers', 'No drive numbers fit the legs with this gearing')
}
