import { describe, expect, test } from 'vitest'
import { game } from '../../../seed/game.ts'
import { kittiwake } from '../../../seed/kittiwake.ts'
import { robot as contract } from '../../../src/api/contracts/robot.ts'
import { checkRobot, type Mechanism, type Robot, type Stage } from '../../../src/model/documents/index.ts'
import { followHardware, mechanismDuration, timing } from '../../../src/model/timing/index.ts'
import { driveInput, motorPivotInput } from './inputs.ts'

const arm = (reduction: number): Mechanism => ({
  id: 'arm',
  name: 'Arm',
  calculator: 'pivot',
  input: { ...motorPivotInput, reduction },
})
const base: Mechanism = {
  id: 'base',
  name: 'Base',
  calculator: 'drive',
  input: {
    ...driveInput,
    legs: [
      { length: 3, weight: 1 },
      { length: 7, weight: 2 },
    ],
  },
}

const lower = (robot: Robot): Stage => {
  const trip = robot.collect['outer']!
  if (!('stages' in trip)) throw new Error('no stages')
  return trip.stages[0]!
}

function withStage(robot: Robot, stage: Stage): Robot {
  const trip = robot.collect['outer']!
  if (!('stages' in trip)) throw new Error('no stages')
  return { ...robot, collect: { ...robot.collect, outer: { ...trip, stages: [stage, ...trip.stages.slice(1)] } } }
}

const linked = (robot: Robot, follows = true): Robot =>
  withStage(robot, { ...lower(robot), hardware: { mechanism: 'arm', follows } })

const plain: Robot = { ...kittiwake, mechanisms: [arm(80), base] }
const following = followHardware(plain, linked(plain))

describe('a stage that follows a mechanism', () => {
  test('gets its Duration when it is linked, and no other stage changes', () => {
    expect(lower(following).duration).toEqual(timing('pivot', motorPivotInput as never)['duration' as never])
    expect(lower(following).duration).not.toEqual(lower(kittiwake).duration)
    expect(following.score).toBe(plain.score)
    expect(following.collect['channel']).toBe(plain.collect['channel'])
  })

  test('follows another reduction', () => {
    const edited = followHardware(following, { ...following, mechanisms: [arm(120), base] })
    expect(lower(edited).duration).toEqual(mechanismDuration(arm(120)))
    expect(lower(edited).duration).not.toEqual(lower(following).duration)
    expect(lower(edited).hardware).toEqual({ mechanism: 'arm', follows: true })
  })

  test('keeps its last time where the mechanism can not do it, and follows again when it can', () => {
    const weak = { ...following, mechanisms: [arm(2), base] }
    expect(mechanismDuration(arm(2))).toBeNull()
    const stuck = followHardware(following, weak)
    expect(lower(stuck).duration).toEqual(lower(following).duration)
    const again = followHardware(stuck, { ...stuck, mechanisms: [arm(120), base] })
    expect(lower(again).duration).toEqual(mechanismDuration(arm(120)))
  })

  test('follows no longer when it is given a time of its own, which then stays', () => {
    const own: Stage = { ...lower(following), duration: { kind: 'samples', seconds: [0.8, 1, 1.3] } }
    const measured = followHardware(following, withStage(following, own))
    expect(lower(measured)).toEqual({ ...own, hardware: { mechanism: 'arm', follows: false } })
    const edited = followHardware(measured, { ...measured, mechanisms: [arm(120), base] })
    expect(lower(edited).duration).toEqual(own.duration)
    const again = followHardware(edited, linked(edited))
    expect(lower(again).duration).toEqual(mechanismDuration(arm(120)))
  })
})

describe('a drive that follows a mechanism', () => {
  const driven = followHardware(plain, {
    ...plain,
    drive: { ...plain.drive, hardware: { mechanism: 'base', follows: true } },
  })

  test('gets the trapezoid that fits the legs, and keeps its pace', () => {
    const answer = timing('drive', base.input as typeof driveInput)
    if (!answer.possible) throw new Error('impossible')
    const { topSpeed, acceleration, deceleration } = answer.quantities.trapezoid!
    expect(driven.drive).toMatchObject({ topSpeed, acceleration, deceleration, pace: kittiwake.drive.pace })
  })

  test('follows no longer when one of its numbers is typed', () => {
    const typed = followHardware(driven, { ...driven, drive: { ...driven.drive, topSpeed: 3 } })
    expect(typed.drive.hardware?.follows).toBe(false)
    expect(typed.drive.topSpeed).toBe(3)
  })
})

describe('the document', () => {
  test('may hold mechanisms and links, and is refused where a link leads nowhere', () => {
    expect(contract.parse(following)).toEqual(following)
    expect(checkRobot(game, following)).toEqual([])
    const lost = checkRobot(game, { ...following, mechanisms: [base] })
    expect(lost.map(({ path }) => path.join('/'))).toEqual(['collect/outer/stages/0/hardware/mechanism'])
  })

  test('says so where the drive’s numbers come from something that is no drive, or two mechanisms share an id', () => {
    const wrong: Robot = { ...plain, drive: { ...plain.drive, hardware: { mechanism: 'arm', follows: false } } }
    expect(checkRobot(game, wrong).map(({ message }) => message)).toEqual([
      'There is no drive among the robot’s mechanisms with the id “arm”',
    ])
    const twice: Robot = { ...plain, mechanisms: [base, base] }
    expect(checkRobot(game, twice).map(({ message }) => message)).toEqual([
      'There are two mechanisms with the id “base”',
    ])
  })
})
