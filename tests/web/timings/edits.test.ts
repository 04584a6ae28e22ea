import { describe, expect, test } from 'vitest'
import { breakwater } from '../../../seed/index.ts'
import { kittiwake } from '../../../seed/kittiwake.ts'
import { parts } from '../../../seed/parts.ts'
import { checkRobot, type Mechanism, type Robot, type Stage } from '../../../src/model/documents/index.ts'
import { mean } from '../../../src/model/duration/index.ts'
import { followHardware, mechanismDuration } from '../../../src/model/timing/index.ts'
import { valueAt, withValueAt } from '../../../web/data/place.ts'
import { certaintyOf, withCertainty } from '../../../web/screens/timings/certainty.ts'
import {
  behind,
  copied,
  driveAt,
  following,
  freeMechanismId,
  linkAt,
  ownLessHardware,
  takenOver,
  usersOf,
  withMechanism,
  withoutMechanism,
} from '../../../web/screens/timings/edits.ts'
import { firstMechanism } from '../../../web/screens/timings/first.ts'
import { drivenWays } from '../../../web/screens/timings/gameLegs.ts'
import { numbersIn } from '../../../web/screens/timings/inputs.ts'
import { mechanismProblems } from '../../../web/screens/timings/problems.ts'

const { game } = breakwater
const around = { game, robot: kittiwake, shelf: parts, legs: [{ length: 4, weight: 1 }], today: '2026-11-27' }
const arm = firstMechanism('motorArm', { id: 'arm', name: 'Arm' }, around)
const base = firstMechanism('drive', { id: 'base', name: 'Base' }, around)
const raise = ['score', 'gantry', 0, 'stages', 0]
const lower = ['score', 'piers', 0, 'stages', 0]
const edited = (before: Robot, after: Robot) => followHardware(before, after)
const stageAt = (robot: Robot, at: readonly (string | number)[]) => valueAt(robot, at) as Stage
const linked = edited(kittiwake, withMechanism(kittiwake, arm, raise))
const two = edited(linked, withMechanism(linked, base, driveAt))

describe('a mechanism for a stage', () => {
  test('is added and followed at once', () => {
    expect(stageAt(linked, raise)).toMatchObject({
      duration: mechanismDuration(arm),
      hardware: { mechanism: 'arm', follows: true },
    })
    expect(checkRobot(game, two)).toEqual([])
    expect(linkAt(two, raise.slice(0, 3), 'raise')).toBe('arm')
    expect(linkAt(two, raise.slice(0, 3), 'let-go')).toBeUndefined()
    expect(linkAt(two, undefined, 'drive')).toBe('base')
    expect(freeMechanismId({ ...kittiwake, mechanisms: [{ ...arm, id: 'motorArm-1' }] }, 'motorArm')).toBe('motorArm-2')
  })

  test('can be another stage’s too, or a copy can, which then goes its own way', () => {
    const both = edited(linked, following(linked, 'arm', lower))
    expect(usersOf(both, 'arm').map(({ name, follows }) => [name, follows])).toEqual([
      ['Raise the arm', true],
      ['Lower the arm', true],
    ])
    const copy = copied(arm, 'arm-2', 'Down')
    const apart = edited(linked, withMechanism(linked, copy, lower))
    const slower: Robot = {
      ...apart,
      mechanisms: [arm, { ...copy, input: { ...copy.input, reduction: 300 } } as Mechanism],
    }
    const after = edited(apart, slower)
    expect(stageAt(after, raise)).toEqual(stageAt(apart, raise))
    expect(mean(stageAt(after, lower).duration)).toBeGreaterThan(mean(stageAt(apart, lower).duration))
  })

  test('is removed with all that names it, and no time changes', () => {
    const without = edited(two, withoutMechanism(two, 'arm'))
    expect(without.mechanisms).toEqual([base])
    expect(stageAt(without, raise)).toEqual({ ...stageAt(kittiwake, raise), duration: mechanismDuration(arm) })
    const none = withoutMechanism(without, 'base')
    expect('mechanisms' in none).toBe(false)
    expect('hardware' in none.drive).toBe(false)
    expect(none.drive.topSpeed).toBe(two.drive.topSpeed)
  })
})

describe('a file whose times no longer agree with their hardware', () => {
  const elsewhere = withValueAt(
    withValueAt(two, [...raise, 'duration'], { kind: 'fixed', seconds: 9 }),
    ['drive', 'topSpeed'],
    1,
  )

  test('is found, and mended in one step in which everything still follows', () => {
    expect(behind(two)).toEqual([])
    expect(behind(elsewhere).map(({ name, has }) => [name, has])).toEqual([
      ['Raise the arm', 9],
      [null, 1],
    ])
    const mended = edited(elsewhere, takenOver(elsewhere))
    expect(mended).toEqual(two)
    expect(behind(mended)).toEqual([])
  })

  test('is left alone where the time is the person’s own, or the mechanism can not do it', () => {
    const own = withValueAt(elsewhere, [...raise, 'hardware', 'follows'], false)
    expect(behind(own).map(({ name }) => name)).toEqual([null])
    expect(ownLessHardware(stageAt(own, raise).duration, arm)).toBeCloseTo(9 - mean(mechanismDuration(arm)!), 10)
    const weak = { ...arm, input: { ...arm.input, reduction: 0.1 } } as Mechanism
    expect(behind({ ...elsewhere, mechanisms: [weak, base] }).map(({ name }) => name)).toEqual([null])
    expect(ownLessHardware(stageAt(own, raise).duration, weak)).toBeNull()
  })
})

describe('numbers that contradict each other', () => {
  const wrong = (input: object): Robot => ({
    ...linked,
    mechanisms: [{ ...arm, input: { ...arm.input, ...input } } as Mechanism],
  })

  test('are said beside their field, and the stage keeps its last time', () => {
    const odd = wrong({
      efficiency: { kind: 'range', low: 0.8, likely: 0.6, high: 0.9 },
      stops: { low: 1, high: -1 },
      mass: { kind: 'lognormal', median: 400, spread: 3 },
    })
    expect(
      mechanismProblems(odd).map(({ path, message }) => [path.join('/'), message.replaceAll('\u00a0', ' ')]),
    ).toEqual([
      ['mechanisms/0/input/efficiency/likely', 'At least the number before it, 80 %, not 60 %.'],
      ['mechanisms/0/input/stops/high', 'The upper stop must be above the lower one.'],
      [
        'mechanisms/0/input/mass/spread',
        'One in a thousand would lie outside of 0.001 kg to 500 kg: take less spread.',
      ],
    ])
    expect(stageAt(edited(linked, odd), raise)).toEqual(stageAt(linked, raise))
    expect(mechanismProblems(two)).toEqual([])
  })
})

describe('how well a number is known', () => {
  const number = (key: string) => numbersIn('motorArm').find((each) => each.key === key)!

  test('is changed around the same middle, within its limits', () => {
    expect(withCertainty(80, 'tripsRange', number('reduction'))).toEqual({
      kind: 'range',
      low: 72,
      likely: 80,
      high: 88,
      of: 'trips',
    })
    expect(withCertainty(0.95, 'levelRange', number('efficiency'))).toMatchObject({
      likely: 0.95,
      high: 1,
      of: 'level',
    })
    expect(withCertainty(-0.5, 'tripsRange', number('from'))).toMatchObject({ low: -0.55, likely: -0.5, high: -0.45 })
    const lognormal = withCertainty(0.95, 'tripsLognormal', number('efficiency'))
    expect(lognormal).toMatchObject({ kind: 'lognormal', median: 0.95, spread: 1.01 })
    expect(withCertainty(lognormal, 'known', number('efficiency'))).toBe(0.95)
    for (const next of ['known', 'tripsRange', 'levelRange', 'tripsLognormal', 'levelLognormal'] as const)
      expect(certaintyOf(withCertainty(80, next, number('reduction')))).toBe(next)
  })
})

test('a robot drives between every source and goal that it has a trip for', () => {
  const ways = drivenWays(game, { ...kittiwake, score: { piers: kittiwake.score['piers']! } })
  const spots = game.sources.flatMap(({ spots }) => spots.length).reduce((sum, count) => sum + count, 0)
  expect(ways).toHaveLength(2 * spots)
  expect(ways.every(({ to }) => to.startsWith('piers.'))).toBe(true)
})
