import { expect, test } from 'vitest'
import type { FieldReport } from '../../../src/model/scouting/field/types.ts'
import { asChange, remarks, sentences } from '../../../web/screens/event/field/said.ts'

type Whole = NonNullable<FieldReport['whole']>

const whole = (mean: number, interval95: [number, number] | null): Whole => ({
  trips: 40,
  runs: interval95 ? 6 : 1,
  model: { mean: 9.4, sd: 2 },
  field: { mean: 9.4 + mean, sd: 2, interval95: interval95 && [9.4 + interval95[0], 9.4 + interval95[1]] },
  difference: { mean, interval95 },
  distance: 0.2,
  p: 0.03,
  beyond: 0,
})

const report = (of: Whole, parts: FieldReport['parts']): FieldReport => ({
  runs: [],
  trips: 40,
  cutOff: 1,
  leftOut: [{ reason: 'mixed', trips: 2 }],
  sourceUnknown: 0,
  defended: 0,
  whole: of,
  parts,
  legs: [],
  drivers: [],
  distribution: [],
  seen: [],
})
const told = (of: Whole, parts: FieldReport['parts'] = null) => sentences(report(of, parts), of)

test('the sentence of the page, with the half that most of the difference is in', () => {
  const { answer, further } = told(whole(2.7, [1.8, 3.6]), {
    trips: 40,
    difference: 2.7,
    collecting: 2.1,
    scoring: 0.6,
  })
  expect(answer).toBe(
    'The model says 9.4\u00a0s a trip, the field says 12.1\u00a0s, with 95 % between 11.2\u00a0s and 13.0\u00a0s.',
  )
  expect(further).toEqual([
    'Trips on the field take 2.7\u00a0s longer; with 95 % between 1.8\u00a0s and 3.6\u00a0s.',
    '2.1\u00a0s of the 2.7\u00a0s are in collecting.',
    'From 40 trips of 6 runs.',
  ])
})

test('what is quicker is said as less, smaller end first', () => {
  const { further } = told(whole(-1, [-1.5, -0.5]), { trips: 40, difference: -1, collecting: -0.2, scoring: -0.8 })
  expect(further[0]).toBe('Trips on the field take 1.0\u00a0s less; with 95 % between 0.5\u00a0s and 1.5\u00a0s.')
  expect(further[1]).toBe('0.8\u00a0s of the 1.0\u00a0s are in scoring.')
})

test('halves that go both ways have no share of the whole; a difference that may be none is called that', () => {
  const { further } = told(whole(0.4, [-0.5, 1.3]), { trips: 30, difference: 0.4, collecting: 1.2, scoring: -0.8 })
  expect(further.slice(0, 3)).toEqual([
    'The difference of +0.4\u00a0s may be chance: with 95 % it lies between −0.5\u00a0s and +1.3\u00a0s.',
    'Collecting brings +1.2\u00a0s, scoring −0.8\u00a0s.',
    'Only 30 trips had collecting timed, and the split is of those.',
  ])
})

test('one run says nothing about the next, and what was left out is named', () => {
  const one = whole(1, null)
  expect(told(one).answer).toBe('The model says 9.4\u00a0s a trip, the field says 10.4\u00a0s.')
  expect(told(one).further[0]).toMatch(/^All trips are of one run/)
  expect(remarks(report(one, null))).toEqual([
    expect.stringMatching(/^one trip ended with the match/),
    'Left out: 2 trips with pieces of several sources or to several goals.',
  ])
  expect([0.93, 1, 1.12].map(asChange)).toEqual(['−7\u00a0%', '0\u00a0%', '+12\u00a0%'])
})
