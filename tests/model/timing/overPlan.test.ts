import { beforeAll, describe, expect, test } from 'vitest'
import { tank, wideCylinder } from '../../../seed/parts.ts'
import type { Option, Trip } from '../../../src/model/documents/types.ts'
import { expectedTrips, Planner, type Solved } from '../../../src/model/plan/index.ts'
import { slowedFrom } from '../../../src/model/plan/slowedFrom.ts'
import { type AirOfRobot, airOverPlan } from '../../../src/model/timing/index.ts'
import { harbour, ternBest } from '../documents/harbour.ts'

const game = harbour()
/** One goal, so that a slower stage there can not be avoided, and good and bad days. */
const option: Option = {
  ...ternBest(),
  robot: { ...ternBest().robot, form: { spread: 1.1 } },
  role: { ...ternBest().role, goals: ['pier'] },
}

/** The option whose every score trip takes some seconds more. */
function slower(seconds: number): Option {
  const copy = structuredClone(option)
  for (const entries of Object.values(copy.robot.score)) for (const entry of entries) lengthen(entry, seconds)
  return copy
}

function lengthen(trip: Trip, seconds: number): void {
  // A trip told as a whole has no stage that could wait.
  if ('whole' in trip) return
  const waits = trip.stages.map(({ id }) => id)
  trip.stages.push({
    id: 'wait',
    name: 'Wait for air',
    duration: { kind: 'fixed', seconds },
    after: ['drive', ...waits],
  })
}

/** The same stages in both, so that only times differ. */
const withStage = slower

let planner: Planner
let planned: Solved

beforeAll(() => {
  planner = new Planner(game)
  planned = planner.solved(withStage(0))
})

describe('A plan whose legs are slowed from some time on', () => {
  const at = (seconds: number, from: number | null) =>
    slowedFrom(option, { planned, slowed: planner.solved(withStage(seconds)), from })

  test('is the plan itself where it never is, and where nothing is slower', () => {
    const own = planner.value(withStage(0))
    expect(at(3, null)).toBeCloseTo(own, 6)
    for (const from of [0, 10, 33.3, game.clock.teleop]) expect(at(0, from), `from ${from}`).toBeCloseTo(own, 6)
  })

  test('is the slowed plan where it is slowed from the start', () => {
    expect(at(3, game.clock.teleop)).toBeCloseTo(planner.value(withStage(3)), 6)
  })

  test('loses more the earlier that is', () => {
    const points = [0, 10, 30, 60, game.clock.teleop].map((from) => at(3, from))
    for (const [i, value] of points.entries()) if (i > 0) expect(value).toBeLessThanOrEqual(points[i - 1]! + 1e-6)
    expect(points.at(-1)!).toBeLessThan(points[0]! - 0.5)
  })

  test('must be the same option', () => {
    const other = { ...option, role: { ...option.role, goals: option.role.goals.slice(0, 0) } }
    expect(() => slowedFrom(option, { planned, slowed: planner.solved(other), from: 10 })).toThrow(/times only/)
  })
})

test('Expected trips are as many as the plan’s pieces need', () => {
  const trips = expectedTrips(planned)
  const of = (kind: string) =>
    trips.filter(({ leg }) => leg.kind === kind).reduce((sum, { ended }) => sum + ended.reduce((a, b) => a + b, 0), 0)
  expect(of('finish')).toBeLessThanOrEqual(1 + 1e-9)
  expect(of('finish')).toBeGreaterThan(0)
  // Each trip that scores was loaded before: by collecting, or as the preload.
  expect(of('score')).toBeLessThanOrEqual(of('collect') + 1 + 1e-9)
  expect(of('score')).toBeGreaterThan(1)
})

describe('Stored air through the trips of a plan', () => {
  const strokes = [{ cylinder: wideCylinder, stop: null, deadVolume: 0.00001, out: 1, back: 1 }]
  const legs = Object.keys(option.robot.score).flatMap((goal) =>
    option.robot.score[goal]!.map((_, entry) => ({ leg: { kind: 'score' as const, goal, entry }, strokes })),
  )
  const air: AirOfRobot = {
    tank,
    tanks: 1,
    stored: 900_000,
    working: 501_325,
    ambient: 101_325,
    leak: 0,
    compressor: null,
    trips: legs,
    before: { seconds: 15, strokes: [] },
  }
  const run = (change: Partial<AirOfRobot>) =>
    airOverPlan(game, { option: withStage(0), slowed: withStage(3), air: { ...air, ...change } })

  test('is lost at the trip that the mass balance says, and costs points from then on', () => {
    const { lostAt, points, curves } = run({})
    expect(lostAt).not.toBeNull()
    // Each trip lowers the tank by 0.4 bar times 3; the store above the working pressure is done when so many have ended.
    const volume =
      ((Math.PI * 0.04 ** 2) / 4 + (Math.PI * (0.04 ** 2 - 0.016 ** 2)) / 4) * 0.2 + (2 * 0.00001 * 400_000) / 501_325
    const lasting = ((900_000 - 501_325) * tank.volume) / (501_325 * volume)
    const { steps, step } = planned.problem
    const ended = expectedTrips(planned).filter(({ leg }) => leg.kind === 'score')
    let done = 0
    let t = steps
    for (; t >= 0 && done <= lasting; t--) done += ended.reduce((sum, each) => sum + each.ended[t]!, 0)
    expect(Math.abs(lostAt! - (t + 1) * step)).toBeLessThan(0.11)
    expect(points.withThis).toBeLessThan(points.always)
    expect(points.withOneTankMore).toBeGreaterThan(points.withThis)
    expect(points.withOneTankMore).toBeLessThanOrEqual(points.always + 1e-9)
    for (const [i, pressure] of curves.pressure.entries()) {
      expect(curves.pressureAdiabatic[i]!).toBeLessThanOrEqual(pressure + 1e-6)
      if (i > 0) expect(curves.timeLeft[i]!).toBeLessThan(curves.timeLeft[i - 1]!)
    }
  })

  test('that lasts costs nothing, and a further tank is then worth nothing', () => {
    const { lostAt, points } = run({ tanks: 40 })
    expect(lostAt).toBeNull()
    expect(points.withThis).toBe(points.always)
    expect(points.withOneTankMore).toBe(points.always)
  })

  test('that autonomous uses up already is lost from teleop’s start', () => {
    const { lostAt, points } = run({ before: { seconds: 15, strokes: [{ ...strokes[0]!, out: 9, back: 9 }] } })
    expect(lostAt).toBe(game.clock.teleop)
    expect(points.withThis).toBeCloseTo(new Planner(game).value(withStage(3)), 6)
  })
})
