import { describe, expect, test } from 'vitest'
import { comparisonWith } from '../../../seed/comparison.ts'
import { game } from '../../../seed/game.ts'
import { optionOf } from '../../../seed/index.ts'
import { comparisonRecord } from '../../../src/api/contracts/index.ts'
import { legReport } from '../../../src/model/leg/index.ts'
import { choicesOf, overrideFrom } from '../../../web/screens/overrides/choices.ts'
import { legRequests, legsOf } from '../../../web/screens/overrides/legs.ts'
import { computedWords, overridesSource, ownWords } from '../../../web/screens/overrides/words.ts'

const options = [optionOf('shearwater-best'), optionOf('kittiwake-best')]
const documents = { game, options }
const made = { id: 'own-1', now: '2027-01-18T09:41:27.123Z' }
const typed = { value: '7,5', low: '', high: '', reason: ' Timed it ', who: 'Tilly' }
const nbsp = '\u00a0'

describe('what can be overridden', () => {
  const choices = choicesOf(documents, [])
  test('are the points of each option and its routine, its pieces on each goal, and each leg, finish and drive of each robot, by name', () => {
    const names = choices.map(({ name }) => name)
    expect(names).toContain('Expected points of ‘Shearwater, finish when it pays’')
    expect(names).toContain('Shearwater, whole time: score at Gantry')
    expect(new Set(names).size).toBe(names.length)
    expect(names).toContain('Autonomous points of ‘Shearwater, finish when it pays’')
    expect(names).toContain('Shearwater, chance that it holds: Davit')
    expect(names).toContain('Shearwater, driving time between two spots')
    const ofRobots = options.map(({ robot }) => legsOf(game, robot).length + Object.keys(robot.finish).length + 1)
    const onGoals = options.map(({ robot }) => Object.values(robot.score).filter((ways) => ways.length > 0).length)
    expect(onGoals[0]).toBeGreaterThan(1)
    expect(choices.length).toBe(
      onGoals.reduce((sum, count) => sum + count, 4) + ofRobots.reduce((sum, count) => sum + count, 0),
    )
  })
  test('and not twice', () => {
    const found = overrideFrom(choices[0]!.about, typed, made)
    if ('wrong' in found) throw new Error('it is whole')
    expect(choicesOf(documents, [found.override])).toEqual(choices.slice(1))
  })
  test('each leg has a computed time from the places where it starts', () => {
    for (const { robot } of options)
      for (const leg of legsOf(game, robot)) {
        const asked = legRequests(game, robot, leg)
        expect(asked.length).toBeGreaterThan(0)
        expect(legReport(game, robot, asked[0]!).mean).toBeGreaterThan(0.5)
      }
    expect(legRequests(game, options[0]!.robot, { kind: 'collect', source: 'nowhere' })).toEqual([])
  })
})

describe('an own number from what was typed', () => {
  const leg = choicesOf(documents, []).find(({ about }) => about.kind === 'leg')!.about

  test('is points, a fixed time, or a range, with reason, name and minute, and keeps to the contract', () => {
    const point = overrideFrom({ kind: 'points', option: options[0]!.id }, typed, made)
    const fixed = overrideFrom(leg, typed, made)
    const range = overrideFrom(leg, { ...typed, low: '6', high: '9.5' }, made)
    expect(point).toMatchObject({
      override: { points: 7.5, reason: 'Timed it', who: 'Tilly', on: '2027-01-18T09:41Z', kind: 'points' },
    })
    expect(fixed).toMatchObject({ override: { whole: { kind: 'fixed', seconds: 7.5 } } })
    expect(range).toMatchObject({ override: { whole: { kind: 'range', low: 6, likely: 7.5, high: 9.5 } } })
    for (const found of [point, fixed, range]) {
      if ('wrong' in found) throw new Error('it is whole')
      const { success, error } = comparisonRecord.safeParse({ ...comparisonWith(null), overrides: [found.override] })
      expect(success, error?.message).toBe(true)
    }
  })
  test('needs a reason and a name, and is answered beside each field', () => {
    expect(overrideFrom(leg, { value: 'long', low: '3', high: '', reason: ' ', who: '' }, made)).toEqual({
      wrong: {
        value: expect.stringContaining('long'),
        high: 'Give low and high, or neither.',
        reason: 'Please say why; without a reason nobody can check it.',
        who: 'Please say who says so.',
      },
    })
    expect(overrideFrom(leg, { ...typed, low: '8', high: '9' }, made)).toEqual({
      wrong: { low: 'Low must not be above likely, nor likely above high.' },
    })
  })
  test('of a drive names two different spots, of which none is overridden yet; a chance is typed in per cent', () => {
    const between = (from: string, to: string) => ({ kind: 'travel' as const, robot: 'shearwater', from, to })
    const choose = { wrong: { ends: 'Choose two different spots.' } }
    expect(overrideFrom(between('', 'gantry.foot'), typed, made)).toEqual(choose)
    expect(overrideFrom(between('gantry.foot', 'gantry.foot'), typed, made)).toEqual(choose)
    const found = overrideFrom(between('piers.south', 'gantry.foot'), typed, made)
    if ('wrong' in found) throw new Error('it is whole')
    const kept = { ...found.override, computed: 2.31 }
    expect(overridesSource([kept], documents)).toContain(
      `Shearwater, driving time: Piers, spot 1 – Gantry, spot 1: computed 2.3${nbsp}s, set to 7.5${nbsp}s`,
    )
    const again = overrideFrom(between('gantry.foot', 'piers.south'), typed, { ...made, overrides: [found.override] })
    expect(again).toEqual({ wrong: { ends: 'The time between these two is overridden already.' } })
    const chance = { kind: 'success' as const, robot: 'shearwater', finish: 'davit' }
    expect(overrideFrom(chance, { ...typed, value: '130' }, made)).toEqual({
      wrong: { value: expect.stringContaining('100') },
    })
    const held = overrideFrom(chance, { ...typed, value: '62' }, made)
    if ('wrong' in held) throw new Error('it is whole')
    expect(held.override).toMatchObject({ probability: 0.62 })
    const auto = overrideFrom({ kind: 'auto', option: options[0]!.id }, typed, made)
    const goal = documents.game.goals[0]!.id
    const pieces = overrideFrom({ kind: 'pieces', option: options[0]!.id, goal }, typed, made)
    if ('wrong' in pieces) throw new Error('it is whole')
    expect(pieces.override).toMatchObject({ kind: 'pieces', goal, pieces: 7.5 })
    for (const one of [found, held, auto, pieces]) {
      if ('wrong' in one) throw new Error('it is whole')
      const record = { ...comparisonWith(null), overrides: [one.override] }
      expect(comparisonRecord.safeParse(record).error?.message).toBeUndefined()
    }
  })
  test('is said with what was computed, wherever its answer is explained', () => {
    const found = overrideFrom({ kind: 'points', option: options[0]!.id }, { ...typed, value: '60' }, made)
    if ('wrong' in found) throw new Error('it is whole')
    const kept = { ...found.override, computed: 58.46 }
    expect([computedWords(kept), ownWords(kept)]).toEqual(['58.5 points', '60.0 points'])
    expect(overridesSource([kept], documents)).toBe(
      ' Contains one overridden number. Expected points of ‘Shearwater, finish when it pays’: computed 58.5 points, set to 60.0 points: Timed it (Tilly).',
    )
    expect(overridesSource([], documents)).toBe('')
    const range = overrideFrom(leg, { ...typed, low: '6', high: '9.5' }, made)
    if ('wrong' in range) throw new Error('it is whole')
    expect(ownWords(range.override)).toBe(`6.0${nbsp}s – 7.5${nbsp}s – 9.5${nbsp}s`)
  })
})
