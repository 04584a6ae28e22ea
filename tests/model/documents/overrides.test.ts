import { describe, expect, test } from 'vitest'
import { game } from '../../../seed/game.ts'
import { optionOf } from '../../../seed/index.ts'
import { compare } from '../../../src/model/compare/index.ts'
import { checkRobot } from '../../../src/model/documents/checkRobot.ts'
import {
  overriddenThing,
  pointsEach,
  withOverriddenPoints,
  withOverriddenRobot,
  withoutOverridden,
} from '../../../src/model/documents/overrides.ts'
import type { Override } from '../../../src/model/documents/records.ts'
import { legReport } from '../../../src/model/leg/index.ts'
import { simulate } from '../../../src/model/match/index.ts'
import { Planner } from '../../../src/model/plan/index.ts'
import { TravelTimes } from '../../../src/model/plan/travelTimes.ts'

const said = { reason: 'Timed on the practice field', who: 'Tilly', on: '2027-01-16' }
const [hook, practice] = [optionOf('shearwater-best'), optionOf('kittiwake-best')]
const points: Override = { ...said, id: 'a', kind: 'points', option: hook.id, points: 61 }
const gantry: Override = {
  ...said,
  id: 'b',
  kind: 'leg',
  robot: hook.robot.id,
  leg: { kind: 'score', goal: 'gantry', entry: 0 },
  whole: { kind: 'fixed', seconds: 3 },
}

describe('an overridden leg', () => {
  test('takes its own whole time; chance and spots stay, other legs and robots too, and the document itself', () => {
    const before = structuredClone(hook.robot)
    const robot = withOverriddenRobot(hook.robot, [gantry, points])
    const { success, spots } = hook.robot.score['gantry']![0]!
    expect(robot.score['gantry']![0]).toEqual({ success, spots, whole: { kind: 'fixed', seconds: 3 } })
    expect({ ...robot, score: before.score }).toEqual(before)
    expect(hook.robot).toEqual(before)
    expect(withOverriddenRobot(practice.robot, [gantry])).toBe(practice.robot)
  })
  test('that the robot has not is left out', () => {
    const nowhere: Override = { ...gantry, leg: { kind: 'score', goal: 'gantry', entry: 7 } }
    expect(withOverriddenRobot(hook.robot, [nowhere])).toBe(hook.robot)
    expect(withOverriddenRobot(hook.robot, [{ ...gantry, leg: { kind: 'finish', finish: 'moon' } }])).toBe(hook.robot)
  })
  test('that is quicker brings more points, and slower fewer', () => {
    const planner = new Planner(game, 0.25)
    const value = (seconds: number) =>
      planner.value(
        { ...hook, robot: withOverriddenRobot(hook.robot, [{ ...gantry, whole: { kind: 'fixed', seconds } }]) },
        { form: false },
      )
    expect(value(2)).toBeGreaterThan(value(5) + 1)
    expect(value(5)).toBeGreaterThan(value(12))
  })
  test('takes the unknowns about its time away, and keeps what they say elsewhere', () => {
    const options = [hook, practice]
    const time = '/options/0/robot/score/gantry/0/stages/0/duration'
    const other = '/options/1/robot/score/gantry/0/stages/0/duration'
    const chance = '/options/0/robot/score/gantry/0/success'
    const unknown = (id: string, ...paths: string[]) => ({ id, paths })
    expect(
      withoutOverridden([unknown('gone', time), unknown('half', time, other), unknown('chance', chance)], options, [
        gantry,
      ]),
    ).toEqual([unknown('half', other), unknown('chance', chance)])
    expect(withoutOverridden([unknown('gone', time)], options, [points])).toEqual([unknown('gone', time)])
    // A way to score whose number begins alike is another one.
    const tenth = unknown('tenth', '/options/0/robot/score/gantry/01/stages/0/duration')
    expect(withoutOverridden([tenth], options, [gantry])).toEqual([tenth])
  })
})

describe('an own driving time', () => {
  const drive: Override = {
    ...said,
    id: 'd',
    kind: 'travel',
    robot: hook.robot.id,
    from: 'piers.south',
    to: 'gantry.foot',
    seconds: 9.25,
  }
  const robot = withOverriddenRobot(hook.robot, [drive])
  test('counts both ways, and for no other pair, robot or document', () => {
    const times = (of: typeof robot) => new TravelTimes().for(game, of)
    const [own, computed] = [times(robot), times(hook.robot)]
    expect(own('piers.south', 'gantry.foot')).toBe(9.25)
    expect(own('gantry.foot', 'piers.south')).toBe(9.25)
    expect(computed('piers.south', 'gantry.foot')).toBeLessThan(5)
    expect(own('piers.north', 'gantry.foot')).toBe(computed('piers.north', 'gantry.foot'))
    expect(withOverriddenRobot(practice.robot, [drive])).toBe(practice.robot)
    expect(checkRobot(game, robot)).toEqual([])
    // A leg is told with it, too.
    const leg = { kind: 'score', goal: 'gantry', entry: 0, spot: 'gantry.foot', from: 'piers.south' } as const
    const more = legReport(game, robot, { ...leg, piece: 'buoy', load: 1 }).drive!.seconds
    expect(more).toBe(9.25)
  })
  test('with an end that the game has not is refused, in words', () => {
    const times = [{ from: 'piers.south', to: 'moon', seconds: 3 }]
    const [problem, ...more] = checkRobot(game, { ...hook.robot, drive: { ...hook.robot.drive, times } })
    expect(more).toEqual([])
    expect(problem).toMatchObject({ path: ['drive', 'times', 0, 'to'], message: expect.stringContaining('moon') })
  })
  test('is refused twice for one drive, or for none; set over the design’s own time it is the one that counts', () => {
    const named = (...times: [string, string][]) => {
      const own = times.map(([from, to]) => ({ from, to, seconds: 3 }))
      return checkRobot(game, { ...hook.robot, drive: { ...hook.robot.drive, times: own } }).map(({ said, path }) => [
        said?.code,
        path,
      ])
    }
    expect(named(['piers.south', 'gantry.foot'], ['piers.north', 'gantry.foot'])).toEqual([])
    expect(named(['piers.south', 'gantry.foot'], ['gantry.foot', 'piers.south'])).toEqual([
      ['driveTwice', ['drive', 'times', 1, 'to']],
    ])
    expect(named(['piers.south', 'piers.south'])).toEqual([['driveNowhere', ['drive', 'times', 0, 'to']]])
    const back = { ...drive, from: drive.to, to: drive.from, seconds: 4 }
    const twice = withOverriddenRobot(robot, [back])
    expect(twice.drive.times).toEqual([{ from: 'gantry.foot', to: 'piers.south', seconds: 4 }])
  })
  test('makes a plan that drives there worth less the longer it is, in the plan and in the match', () => {
    // Every way to score and to collect, so that the plan can not evade the slow drives.
    const spots = [...game.sources, ...game.goals].flatMap((place) => place.spots.map(({ id }) => id))
    const slowed = (seconds: number) =>
      withOverriddenRobot(
        hook.robot,
        spots.flatMap((from, at) =>
          spots.slice(at + 1).map((to): Override => ({ ...drive, id: `${from} ${to}`, from, to, seconds })),
        ),
      )
    const planner = new Planner(game, 0.25)
    const worth = (seconds: number) => planner.value({ ...hook, robot: slowed(seconds) }, { form: false })
    expect(worth(2)).toBeGreaterThan(worth(6) + 3)
    const played = (seconds: number) =>
      simulate({
        game,
        level: 'local',
        ours: [{ ...hook, robot: slowed(seconds) }, practice, practice],
        theirs: [hook, practice, practice],
        replicates: 200,
        seed: 1,
      }).robots[0]!.points.mean
    expect(played(2)).toBeGreaterThan(played(6) + 3)
  })
})

describe('an own chance that a finish holds', () => {
  const chance: Override = {
    ...said,
    id: 'e',
    kind: 'success',
    robot: hook.robot.id,
    finish: 'davit',
    probability: 0.4,
  }
  test('stands in place of the design’s, and closes what is believed about it', () => {
    const robot = withOverriddenRobot(hook.robot, [chance])
    expect(robot.finish.davit).toEqual({ ...hook.robot.finish.davit, success: 0.4 })
    expect({ ...robot, finish: hook.robot.finish }).toEqual(hook.robot)
    const path = '/options/0/robot/finish/davit/success'
    const other = '/options/0/robot/finish/dry-dock/success'
    expect(withoutOverridden([{ paths: [path] }, { paths: [path, other] }], [hook], [chance])).toEqual([
      { paths: [other] },
    ])
  })
  test('of a finish that the robot has not is left out', () => {
    expect(withOverriddenRobot(hook.robot, [{ ...chance, finish: 'moon' }])).toBe(hook.robot)
  })
})

test('own autonomous points move all outcomes by what they differ from the routine’s, and yield to own points of the option', () => {
  const planner = new Planner(game)
  const report = planner.report(hook)
  const auto: Override = { ...said, id: 'f', kind: 'auto', option: hook.id, points: report.expected.autonomous + 4 }
  const [set] = withOverriddenPoints([hook], [auto], { f: 4 })
  const own = planner.report(set!)
  expect(own.expected.total).toBeCloseTo(report.expected.total + 4, 9)
  expect(own.sd).toBeCloseTo(report.sd, 9)
  const [both] = withOverriddenPoints([hook], [auto, points], { f: 4, a: 61 - report.expected.total })
  expect(planner.value(both!)).toBeCloseTo(61, 6)
})

test('own pieces on a goal move all outcomes by what the pieces there bring, beside own autonomous points', () => {
  const planner = new Planner(game)
  const report = planner.report(hook)
  const [goal, here] = Object.entries(report.expected.goals).sort(([, a], [, b]) => b.pieces - a.pieces)[0]!
  const each = pointsEach(game, hook, goal, here)
  expect(each).toBeCloseTo(here.points / here.pieces, 12)
  const pieces: Override = { ...said, id: 'p', kind: 'pieces', option: hook.id, goal, pieces: here.pieces + 2 }
  const auto: Override = { ...said, id: 'f', kind: 'auto', option: hook.id, points: report.expected.autonomous + 4 }
  const [set] = withOverriddenPoints([hook], [pieces, auto], { p: 2 * each, f: 4 })
  const own = planner.report(set!)
  expect(own.expected.total).toBeCloseTo(report.expected.total + 2 * each + 4, 9)
  expect(own.sd).toBeCloseTo(report.sd, 9)
  const [both] = withOverriddenPoints([hook], [pieces, points], { p: 2 * each, a: 61 - report.expected.total })
  expect(planner.value(both!)).toBeCloseTo(61, 6)
  expect(overriddenThing(pieces)).not.toBe(overriddenThing({ ...pieces, goal: 'another' }))
})

test('a piece on a goal where none are placed is worth the goal’s award', () => {
  const none = { pieces: 0, points: 0 }
  for (const { id, award } of game.goals)
    expect(pointsEach(game, hook, id, none)).toBe(
      award.kind === 'each' ? award.teleop : award.teleopPerSecond * (hook.holdSeconds[id] ?? 0),
    )
  expect(pointsEach(game, hook, 'no such goal', none)).toBe(0)
})

describe('overridden points', () => {
  const planner = new Planner(game)
  const computed = planner.value(hook)
  const [set] = withOverriddenPoints([hook, practice], [points], { [points.id]: 61 - computed })

  test('are the mean of the option, by the model; its spread stays', () => {
    const [plain, own] = [hook, set!].map((option) => planner.report(option))
    expect(plain!.expected.total).toBeCloseTo(computed, 6)
    expect(own!.expected.total).toBeCloseTo(61, 6)
    expect(own!.sd).toBeCloseTo(plain!.sd, 6)
    expect(own!.p90 - plain!.p90).toBeCloseTo(61 - computed, 6)
  })
  test('stay what was set when the option is computed otherwise: the adjustment is made anew', () => {
    const faster = { ...hook, robot: { ...hook.robot, drive: { ...hook.robot.drive, topSpeed: 5 } } }
    const value = planner.value(faster)
    expect(value).not.toBeCloseTo(computed, 1)
    const [own] = withOverriddenPoints([faster], [points], { [points.id]: 61 - value })
    expect(planner.value(own!)).toBeCloseTo(61, 6)
  })
  test('change no other option, and none before it is known what is computed', () => {
    expect(withOverriddenPoints([hook, practice], [points], { [points.id]: 61 - computed })[1]).toBe(practice)
    expect(withOverriddenPoints([hook], [points], {})).toEqual([hook])
  })
  test('turn the answer of a comparison where they should', () => {
    const before = compare({ game, options: [hook, practice] }).options.map(({ mean }) => mean)
    expect(before[0]).toBeLessThan(before[1]!)
    const after = compare({ game, options: [set!, practice] }).options.map(({ mean }) => mean)
    expect(after).toEqual([expect.closeTo(61, 6), before[1]])
  })
})

test('two overrides about one number have one name, about others others', () => {
  const names = [
    points,
    { ...points, id: 'c', points: 3 },
    gantry,
    { ...gantry, leg: { kind: 'score', goal: 'gantry', entry: 1 } as const },
    { ...gantry, leg: { kind: 'finish', finish: 'gantry' } as const },
  ].map((override) => overriddenThing(override as Override))
  expect(names[0]).toBe(names[1])
  expect(new Set(names).size).toBe(4)
  const between = (from: string, to: string): Override => ({
    ...said,
    id: 'g',
    kind: 'travel',
    robot: hook.robot.id,
    from,
    to,
    seconds: 2,
  })
  expect(overriddenThing(between('x', 'y'))).toBe(overriddenThing(between('y', 'x')))
  expect(overriddenThing(between('x', 'y'))).not.toBe(overriddenThing(between('x', 'z')))
})
