import { expect, test } from 'vitest'
import { game } from '../../../seed/game.ts'
import { kittiwake } from '../../../seed/kittiwake.ts'
import { robot as contract } from '../../../src/api/contracts/robot.ts'
import type { Mechanism, Option, Robot } from '../../../src/model/documents/index.ts'
import { Planner } from '../../../src/model/plan/index.ts'
import {
  filled,
  followersOf,
  followHardware,
  mechanismDrive,
  mechanismDuration,
  mostOff,
  placesToPlan,
  pointsAt,
  sweep,
  withGearing,
} from '../../../src/model/timing/index.ts'
import { firstOption } from '../../../web/data/assemble.ts'
import { driveInput, motorPivotInput } from './inputs.ts'

const arm: Mechanism = { id: 'arm', name: 'Arm', calculator: 'pivot', input: motorPivotInput }
const legs = [2, 4, 6, 9].map((length) => ({ length, weight: 1 }))
const base: Mechanism = { id: 'base', name: 'Base', calculator: 'drive', input: { ...driveInput, legs } }
const plain: Robot = { ...kittiwake, mechanisms: [arm, base] }

type Scored = Robot['score'][string][number]
const lastStage = (trip: Scored, change: object): Scored => {
  if (!('stages' in trip)) return trip
  return { ...trip, stages: [...trip.stages.slice(0, -1), { ...trip.stages.at(-1)!, ...change }] }
}
const withLastStages = (robot: Robot, change: object): Robot => ({
  ...robot,
  score: Object.fromEntries(
    Object.entries(robot.score).map(([id, entries]) => [id, entries.map((trip) => lastStage(trip, change))]),
  ),
})

/** The last stage of every scoring trip is the arm’s, and the drive’s numbers are the base’s. */
const linked: Robot = withLastStages(
  { ...plain, drive: { ...plain.drive, hardware: { mechanism: 'base', follows: true } } },
  { hardware: { mechanism: 'arm', follows: true } },
)
const option: Option = firstOption(game, followHardware(plain, linked))
const planner = new Planner(game, 0.25)

test('Points of a gearing are those of a plan with its Duration typed into the stages that follow', () => {
  const gearing = { reduction: 130, motors: 2 }
  const duration = mechanismDuration(withGearing(arm, gearing))!
  const robot = withLastStages(option.robot, { duration })
  const typed = new Planner(game, 0.25).value({ ...option, robot })
  expect(pointsAt(planner, { option, mechanism: 'arm' }, gearing)).toEqual({ points: typed, why: null })
  expect(Math.abs(typed - planner.value(option))).toBeGreaterThan(0.1)
})

test('Points of a drive’s gearing are those of a plan with the trapezoid that fits its legs', () => {
  const gearing = { reduction: 10, motors: 4 }
  const drive = { ...option.robot.drive, ...mechanismDrive(withGearing(base, gearing))! }
  const typed = new Planner(game, 0.25).value({ ...option, robot: { ...option.robot, drive } })
  expect(pointsAt(planner, { option, mechanism: 'base' }, gearing).points).toBe(typed)
})

test('A gearing that can not do it has no points, and says why', () => {
  const told = pointsAt(planner, { option, mechanism: 'arm' }, { reduction: 2, motors: 1 })
  expect(told).toMatchObject({ points: null, why: { code: 'tooWeakToLift' } })
})

test('Only what follows counts: a time of one’s own does not, nor a drive without legs to fit it to', () => {
  expect(followersOf(option.robot, 'arm').stages.length).toBe(Object.values(linked.score).flat().length)
  expect(followersOf(option.robot, 'base')).toEqual({ stages: [], drive: true })
  expect(followersOf(plain, 'arm')).toEqual({ stages: [], drive: false })
  const { legs: _, ...without } = { ...driveInput, legs }
  const bare: Robot = { ...option.robot, mechanisms: [arm, { ...base, input: without }] as Mechanism[] }
  expect(followersOf(bare, 'base').drive).toBe(false)
})

test('A reduction with a spread keeps it in proportion, within what a reduction may be', () => {
  const range = { kind: 'range', low: 70, likely: 80, high: 96 } as const
  const unsure = { ...arm, input: { ...motorPivotInput, reduction: range } } as Mechanism
  const geared = withGearing(unsure, { reduction: 40, motors: 3 })
  expect(geared.input).toMatchObject({ motors: 3, reduction: { kind: 'range', low: 35, likely: 40, high: 48 } })
  const far = withGearing(unsure, { reduction: 5000, motors: 1 })
  expect(far.input).toMatchObject({ reduction: { high: 5000 } })
  expect(contract.safeParse({ ...option.robot, mechanisms: [far, base] }).success).toBe(true)
})

/** Plans what is asked for until nothing is. */
function followed(possible: boolean[], plan: (place: number) => number | null) {
  const planned = new Map<number, number | null>()
  for (;;) {
    const places = placesToPlan(possible, planned)
    if (places.length === 0) return planned
    for (const place of places) planned.set(place, plan(place))
  }
}

test('Between planned reductions the line is as close as it says, against every reduction planned', () => {
  const { points } = sweep({
    calculator: 'pivot',
    input: motorPivotInput,
    reductions: { low: 26, high: 240, count: 49 },
    motors: [1],
  })
  const possible = points.map(({ seconds }) => seconds !== null)
  const all = points.map(
    ({ reduction }) => pointsAt(planner, { option, mechanism: 'arm' }, { reduction, motors: 1 }).points,
  )
  const planned = followed(possible, (place) => all[place]!)
  const row = filled(possible, planned)
  expect(possible.filter((can) => !can).length).toBeGreaterThan(0)
  expect(planned.size).toBeLessThan(points.length * 0.7)
  for (const [place, can] of possible.entries()) {
    if (!can) expect(row[place]).toBeNull()
    else expect(Math.abs(row[place]!.points - all[place]!)).toBeLessThanOrEqual(mostOff)
  }
}, 60_000)

test('A straight row is planned at nine places of a hundred, a bend more closely, and a gap is not bridged', () => {
  const can = Array.from({ length: 100 }, () => true)
  expect(followed(can, (place) => 80 - place / 7).size).toBe(9)
  const bent = followed(can, (place) => Math.min(60, 40 + place))
  expect(bent.size).toBeGreaterThan(9)
  const row = filled(can, bent)
  for (const [place, each] of row.entries())
    expect(Math.abs(each!.points - Math.min(60, 40 + place))).toBeLessThanOrEqual(mostOff)
  const gap = can.map((_, place) => place < 30 || place > 40)
  const across = filled(
    gap,
    followed(gap, (place) => (place < 30 ? 10 : 20)),
  )
  expect(across[35]).toBeNull()
  expect(across.slice(0, 30).every((each) => each!.points === 10)).toBe(true)
  expect(across.slice(41).every((each) => each!.points === 20)).toBe(true)
})
