import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { comparisonResult } from '../../../seed/comparisonResult.ts'
import { decisionWith } from '../../../seed/decision.ts'
import type { OptionRecord } from '../../../src/model/documents/records.ts'
import { Planner } from '../../../src/model/plan/index.ts'
import { changesOf, type Documents, type Newest, split, variantsOf } from '../../../web/screens/decisions/changes.ts'
import { explainNow } from '../../../web/screens/decisions/explainNow.ts'
import { movedWords } from '../../../web/screens/decisions/movedWords.ts'
import { withStandIn } from '../../../web/screens/decisions/newest.ts'

const { snapshot } = decisionWith(comparisonResult)
const [hook, practice] = snapshot.options
if (!hook || !practice) throw new Error('the record needs its two options')

const way = ({ robot, ...option }: typeof hook): OptionRecord => ({
  format: 1,
  game: snapshot.game.id,
  design: robot.id,
  option,
})

const unchanged: Newest = {
  game: { body: snapshot.game, revision: 1 },
  ways: Object.fromEntries(snapshot.options.map((option) => [option.id, { body: way(option), revision: 1 }])),
  robots: Object.fromEntries(snapshot.options.map(({ robot }) => [robot.id, { body: robot, revision: 1 }])),
  inputs: snapshot.inputs,
}

const gantry = snapshot.game.goals.find(({ id }) => id === 'gantry')!
const richer = {
  ...snapshot.game,
  goals: snapshot.game.goals.map((goal) =>
    goal === gantry ? { ...goal, award: { kind: 'each' as const, auto: 9, teleop: 9 } } : goal,
  ),
}
const faster = { ...hook.robot, drive: { ...hook.robot.drive, topSpeed: 5 } }
const changed: Newest = {
  ...unchanged,
  game: { body: richer, revision: 2 },
  robots: { ...unchanged.robots, [faster.id]: { body: faster, revision: 3 } },
}

/** Expected points by the model itself, coarse and at form 1: quick, and the same on both sides. */
function meansOf({ game, options }: Documents) {
  const planner = new Planner(game, 0.25)
  return Object.fromEntries(options.map((option) => [option.id, planner.value(option, { form: false })]))
}

test('a copy that was written back from the field stands in for its design, and is told as its change', () => {
  const fromField = {
    design: { id: hook.robot.id, revision: 1 },
    event: 'e',
    team: '1',
    matches: 2,
    practice: 0,
    trips: 9,
    shifts: [],
  }
  const robot = { ...faster, id: 'as-timed', name: 'As timed' }
  const copy = { body: { format: 1 as const, game: snapshot.game.id, robot, fromField }, revision: 2 }
  const [change, ...others] = changesOf(snapshot, withStandIn(unchanged, copy))
  expect([change!.kind, change!.id, change!.name, others]).toEqual(['design', hook.robot.id, 'As timed', []])
  const { options } = change!.apply({ game: snapshot.game, options: snapshot.options })
  expect(options.map((option) => option.robot.id)).toEqual(['as-timed', practice.robot.id])
  expect(withStandIn(unchanged, undefined)).toBe(unchanged)
})

describe('which documents changed', () => {
  test('none where the newest are those of the record', () => {
    expect(changesOf(snapshot, unchanged)).toEqual([])
  })
  test('the game, then the designs, then the ways to play, each with its places', () => {
    const later = { ...way(practice), option: { ...way(practice).option, finish: { mode: 'skip' as const } } }
    const found = changesOf(snapshot, {
      ...changed,
      ways: { ...unchanged.ways, [practice.id]: { body: later, revision: 4 } },
    })
    expect(found.map(({ kind, id, revision }) => [kind, id, revision])).toEqual([
      ['game', 'breakwater', 2],
      ['design', 'shearwater', 3],
      ['option', practice.id, 4],
    ])
    expect(found[1]!.differences).toEqual([
      { place: ['drive', 'topSpeed'], before: hook.robot.drive.topSpeed, after: 5 },
    ])
  })
  test('a document that is gone is kept as the record has it', () => {
    expect(changesOf(snapshot, { ...changed, game: null, robots: { ...changed.robots, [faster.id]: null } })).toEqual(
      [],
    )
  })
})

describe('what each change contributes', () => {
  const changes = changesOf(snapshot, changed)
  const variants = variantsOf(snapshot, changes)

  test('replaces one document at a time in the snapshot, and all of them for now', () => {
    expect(variants.alone.map(({ game, options }) => [game === richer, options[0]!.robot === faster])).toEqual([
      [true, false],
      [false, true],
    ])
    expect(variants.now).toEqual({ game: richer, options: [{ ...hook, robot: faster }, practice] })
    expect(snapshot.options[0]!.robot).toBe(hook.robot)
  })

  test('by the model: more for a gantry piece and a faster drive help each other, and the parts add up', () => {
    const kept = meansOf(variants.kept)
    const moved = split({ written: kept, kept, alone: variants.alone.map(meansOf), now: meansOf(variants.now) })
    expect(moved.program).toEqual({ [hook.id]: 0, [practice.id]: 0 })
    // The faster Shearwater changes nothing for Kittiwake.
    expect(moved.alone[1]![practice.id]).toBe(0)
    expect(moved.alone[0]![hook.id]).toBeGreaterThan(1)
    expect(moved.alone[1]![hook.id]).toBeGreaterThan(0.1)
    // Faster trips bring more pieces, and each of them is worth more.
    expect(moved.together[hook.id]).toBeGreaterThan(0.01)
    expect(moved.together[practice.id]).toBeCloseTo(0, 9)
    const sum = moved.alone[0]![hook.id]! + moved.alone[1]![hook.id]! + moved.together[hook.id]!
    expect(moved.written[hook.id]! + sum).toBeCloseTo(moved.now[hook.id]!, 9)

    // Opened, the number of now tells the same sum, each part to a tenth; and so does the lead.
    const record = decisionWith(comparisonResult)
    for (const of of [{ option: hook.id }, { option: practice.id, rival: hook.id }]) {
      const told = explainNow(record, { changes, moved, source: 'The record.', ...of })
      const figures = told.parts.map(({ value }) => Number(value.replace('\u2212', '-')))
      expect(figures.length).toBe(4)
      const total = Number(told.total!.value.replace('\u2212', '-'))
      expect(Math.abs(figures.reduce((all, part) => all + part, 0) - total)).toBeLessThan(0.05 * 5)
    }
  })

  test('the parts add up to what moved, whatever can not be computed alone', () => {
    const number = fc.double({ min: -200, max: 200, noNaN: true })
    const means = fc.record({ a: number, b: number })
    const given = fc.record({
      written: means,
      kept: means,
      now: means,
      alone: fc.array(fc.option(means), { maxLength: 6 }),
    })
    fc.assert(
      fc.property(given, (of) => {
        const moved = split(of)
        for (const option of ['a', 'b']) {
          const parts = moved.alone.reduce((sum, part) => sum + (part?.[option] ?? 0), 0)
          const sum = moved.written[option]! + moved.program[option]! + parts + moved.together[option]!
          expect(sum).toBeCloseTo(of.now[option as 'a' | 'b'], 6)
        }
        expect(moved.alone.map((part) => part === null)).toEqual(of.alone.map((part) => part === null))
      }),
    )
  })

  test('is said in words, the greatest part first, and nothing below a tenth', () => {
    const moved = split({
      written: { [hook.id]: 58.5, [practice.id]: 59.1 },
      kept: { [hook.id]: 58.5, [practice.id]: 59.13 },
      alone: [
        { [hook.id]: 58.7, [practice.id]: 59.13 },
        { [hook.id]: 60.5, [practice.id]: 59.13 },
      ],
      now: { [hook.id]: 60.6, [practice.id]: 59.13 },
    })
    expect(movedWords(moved, changes, snapshot.options)).toEqual([
      '‘Shearwater, finish when it pays’ went from 58.5 to 60.6 points (+2.1): +2.0 from the design ‘Shearwater’, +0.2 from the game ‘Breakwater’ and \u22120.1 from what they bring only together.',
      '‘Kittiwake, finish when it pays’ stays at 59.1 points.',
    ])
  })
})
