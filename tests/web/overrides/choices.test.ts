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
  test('are the points of each option and each leg of each robot, by name', () => {
    const names = choices.map(({ name }) => name)
    expect(names).toContain('Expected points of ‘Shearwater, finish when it pays’')
    expect(names).toContain('Shearwater, whole time: score at Gantry')
    expect(new Set(names).size).toBe(names.length)
    expect(choices.length).toBe(2 + options.reduce((sum, { robot }) => sum + legsOf(game, robot).length, 0))
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
