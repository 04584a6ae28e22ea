import { describe, expect, test } from 'vitest'
import { game } from '../../../seed/game.ts'
import { optionOf } from '../../../seed/index.ts'
import { compare } from '../../../src/model/compare/index.ts'
import {
  overriddenThing,
  withOverriddenLegs,
  withOverriddenPoints,
  withoutOverridden,
} from '../../../src/model/documents/overrides.ts'
import type { Override } from '../../../src/model/documents/records.ts'
import { Planner } from '../../../src/model/plan/index.ts'

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
    const robot = withOverriddenLegs(hook.robot, [gantry, points])
    const { success, spots } = hook.robot.score['gantry']![0]!
    expect(robot.score['gantry']![0]).toEqual({ success, spots, whole: { kind: 'fixed', seconds: 3 } })
    expect({ ...robot, score: before.score }).toEqual(before)
    expect(hook.robot).toEqual(before)
    expect(withOverriddenLegs(practice.robot, [gantry])).toBe(practice.robot)
  })
  test('that the robot has not is left out', () => {
    const nowhere: Override = { ...gantry, leg: { kind: 'score', goal: 'gantry', entry: 7 } }
    expect(withOverriddenLegs(hook.robot, [nowhere])).toBe(hook.robot)
    expect(withOverriddenLegs(hook.robot, [{ ...gantry, leg: { kind: 'finish', finish: 'moon' } }])).toBe(hook.robot)
  })
  test('that is quicker brings more points, and slower fewer', () => {
    const planner = new Planner(game, 0.25)
    const value = (seconds: number) =>
      planner.value(
        { ...hook, robot: withOverriddenLegs(hook.robot, [{ ...gantry, whole: { kind: 'fixed', seconds } }]) },
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

describe('overridden points', () => {
  const planner = new Planner(game)
  const computed = planner.value(hook)
  const [set] = withOverriddenPoints([hook, practice], [points], { [hook.id]: computed })

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
    const [own] = withOverriddenPoints([faster], [points], { [hook.id]: value })
    expect(planner.value(own!)).toBeCloseTo(61, 6)
  })
  test('change no other option, and none before it is known what is computed', () => {
    expect(withOverriddenPoints([hook, practice], [points], { [hook.id]: computed })[1]).toBe(practice)
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
})
