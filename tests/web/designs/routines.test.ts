import { describe, expect, test } from 'vitest'
import { breakwater, optionOf } from '../../../seed/index.ts'
import type { Auto, AutoStep } from '../../../src/model/documents/types.ts'
import { plan } from '../../../src/model/plan/index.ts'
import { routinePoints } from '../../../web/screens/designs/routines/expected.ts'
import { routineNotes } from '../../../web/screens/designs/routines/notes.ts'
import { type PathPoint, pathLength, pointAt, withPoint } from '../../../web/screens/designs/routines/path.ts'

const { game } = breakwater
const option = optionOf('shearwater-best')
const { robot } = option
const routine = robot.autos.find(({ id }) => id === 'gantry-two')!
const pays = (goal: string) => {
  const { award } = game.goals.find(({ id }) => id === goal)!
  return award.kind === 'each' ? award.auto : 0
}
const step = (more: Partial<AutoStep>): AutoStep => ({
  at: 3,
  goal: 'gantry',
  piece: 'buoy',
  count: 1,
  success: 0.5,
  needsPrevious: false,
  ...more,
})

describe('what a routine is expected to bring', () => {
  test('is the sum of its parts, worked out by hand: 0.8 and 0.5 of a piece, and moving off', () => {
    const found = routinePoints(game, option, routine)
    expect(found.steps.map(({ points }) => points)).toEqual([
      expect.closeTo(0.8 * pays('gantry'), 9),
      expect.closeTo(0.5 * pays('gantry'), 9),
    ])
    expect(found.leaves).toBeCloseTo(0.97 * game.leave!.points, 9)
    expect(found.total).toBeCloseTo(1.3 * pays('gantry') + 0.97 * game.leave!.points, 9)
    // Nothing: both miss and it stays; all: both score and it moves off.
    expect(found.none).toBeCloseTo(0.2 * 0.5 * 0.03, 9)
    expect(found.all).toBeCloseTo(0.8 * 0.5 * 0.97, 9)
  })

  test('is what the plan of a match says of autonomous', () => {
    const report = plan(game, option)
    const auto = robot.autos.find(({ id }) => id === option.auto)!
    expect(routinePoints(game, option, auto).total).toBeCloseTo(report.expected.autonomous, 9)
  })

  test('a step that needs the one before is tried as often as every piece of that one scored', () => {
    const steps = [
      step({ count: 2, success: 0.8 }),
      step({ success: 0.5, needsPrevious: true }),
      step({ success: 1, needsPrevious: true }),
      step({ success: 0.25 }),
    ]
    const found = routinePoints(game, option, { ...routine, steps, leaves: 0 })
    expect(found.steps.map(({ tried }) => tried)).toEqual([1, expect.closeTo(0.64, 12), expect.closeTo(0.32, 12), 1])
    const pieces = [1.6, 0.32, 0.32, 0.25]
    for (const [index, part] of found.steps.entries())
      expect(part.points).toBeCloseTo(pieces[index]! * pays('gantry'), 9)
    expect(found.steps.some(({ limited }) => limited)).toBe(false)
  })

  test('a full goal limits a step, which is said: of two sure pieces one finds room', () => {
    const goals = game.goals.map((goal) => (goal.id === 'gantry' ? { ...goal, capacity: 1 } : goal))
    const steps = [step({ count: 2, success: 1 })]
    const found = routinePoints({ ...game, goals }, option, { ...routine, steps, leaves: 0 })
    expect(found.steps[0]).toMatchObject({ points: pays('gantry'), pieces: 2, worth: pays('gantry'), limited: true })
  })
})

describe('a path', () => {
  const path: PathPoint[] = [
    [0, 1, 1],
    [2, 4, 5],
    [4, 4, 8],
  ]
  test('is as long as its runs: 5 m and 3 m', () => {
    expect(pathLength(path)).toBe(8)
    expect(pathLength([])).toBe(0)
  })
  test('passes evenly between its points, and is nowhere before and after', () => {
    expect(pointAt(path, 1)).toEqual([2.5, 3])
    expect(pointAt(path, 4)).toEqual([4, 8])
    expect(pointAt(path, 4.1)).toBeNull()
    expect(pointAt([[1, 2, 3]], 0.5)).toBeNull()
  })
  test('begins at the routine’s start and comes to a pressed point at half the top speed', () => {
    const start = game.starts.find(({ id }) => id === routine.starts[0])!.at
    const made = withPoint({ game, robot, auto: { ...routine, path: undefined } as Auto }, [start[0] + 3.8, start[1]])
    expect(made).toEqual([
      [0, start[0], start[1]],
      [2, start[0] + 3.8, start[1]],
    ])
    const more = withPoint({ game, robot, auto: { ...routine, path: made } }, [-5, 99])
    expect(more[2]!.slice(1)).toEqual([0, game.field.width])
  })
})

describe('what can not be meant in a routine', () => {
  const notes = (change: Partial<Auto>, system: 'metric' | 'inchPound' = 'metric') =>
    routineNotes(game, { ...robot, autos: [{ ...routine, ...change }] }, system).map(
      ({ path, message }) => `${path.slice(2).join('/')}: ${message.replaceAll('\u00a0', ' ')}`,
    )
  const start = game.starts.find(({ id }) => id === routine.starts[0])!.at

  test('the demo’s routines have nothing of that', () => {
    for (const { body } of breakwater.designs.map((design) => ({ body: design })))
      expect(routineNotes(game, body.robot, 'metric')).toEqual([])
  })
  test('steps out of order, and more scored than held', () => {
    expect(notes({ steps: [step({ at: 8 }), step({ at: 5, count: 3 })] })).toEqual([
      'steps/1/at: Steps stand in order of time; the one before is at 8.0 s.',
      'steps/1/count: With this step it has scored 4 × Buoy, but preload and what it takes are only 2.',
    ])
  })
  test('a path off the field, back in time, after the end, or faster than the robot, in the units chosen', () => {
    const at = (...points: PathPoint[]) => notes({ path: [[0, ...start], ...points], endsAt: 'quay-middle' })
    const end: PathPoint = [14, ...start]
    expect(at([2, -1, 2], end)).toEqual(['path/1/1: This point lies outside the field.'])
    expect(at([2, ...start], [1, ...start])).toEqual([
      'path/2/0: Times rise along the path; the point before is at 2.0 s.',
    ])
    expect(at([99, ...start])).toEqual([`path/1/0: Autonomous ends at ${game.clock.auto.toFixed(1)} s.`])
    const fast: PathPoint = [0.8, start[0], start[1] + 4]
    expect(at(fast, end)).toEqual(['path/1/0: The way there takes 5 m/s on average; the robot’s top speed is 3.8 m/s.'])
    expect(notes({ path: [[0, ...start], fast, end], endsAt: 'quay-middle' }, 'inchPound')).toEqual([
      'path/1/0: The way there takes 16.4 ft/s on average; the robot’s top speed is 12.5 ft/s.',
    ])
  })
  test('a run through an obstacle, and none beside it', () => {
    const [legs] = game.field.obstacles.filter(({ outline }) => outline.length === 4)
    const xs = legs!.outline.map(([x]) => x)
    const ys = legs!.outline.map(([, y]) => y)
    const middle = (Math.min(...ys) + Math.max(...ys)) / 2
    const run = (y: number): PathPoint[] => [
      [0, Math.min(...xs) - 0.5, y],
      [9, Math.max(...xs) + 0.5, y],
    ]
    const found = (y: number) => notes({ path: run(y) }).filter((note) => note.startsWith('path/'))
    expect(found(middle)).toEqual([`path/1/1: The way there leads through ‘${legs!.name}’.`])
    expect(found(Math.max(...ys) + 0.1)).toEqual([])
  })
  test('a path that begins or ends elsewhere than the routine', () => {
    expect(
      notes({
        path: [
          [0, 8, 4],
          [2, 8, 5],
        ],
      }),
    ).toEqual([
      'path: The path does not begin at one of its starts.',
      expect.stringContaining('path: The path does not end where the routine ends, at Gantry'),
    ])
  })
})
