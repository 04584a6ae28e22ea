import { expect, test } from 'vitest'
import { breakwater } from '../../seed/index.ts'
import type { CompareReport } from '../../src/model/compare/types.ts'
import { consequence } from '../../web/screens/rulesChange/flips.ts'

const { decision } = breakwater
const now = (shearwater: number, kittiwake: number): CompareReport => ({
  options: [
    { id: 'shearwater-best', mean: shearwater, sd: 1, p10: 0, p50: 0, p90: 0 },
    { id: 'kittiwake-best', mean: kittiwake, sd: 1, p10: 0, p50: 0, p90: 0 },
  ],
  beats: {},
})

test('a decision stands where the same option is the best under the other rules', () => {
  const found = consequence(decision, now(50, 53))
  expect(found).toMatchObject({ flips: false, chosenBehind: 0, after: { best: 'kittiwake-best', lead: 3 } })
  expect(found.before.best).toBe('kittiwake-best')
})

test('it flips where another is, and what was chosen is behind by what it loses now', () => {
  expect(consequence(decision, now(55.5, 53))).toMatchObject({
    flips: true,
    chosenBehind: 2.5,
    before: { best: 'kittiwake-best' },
    after: { best: 'shearwater-best', lead: 2.5 },
  })
})

test('it does not flip where the two best are level: a lead that is not shown is none', () => {
  const found = consequence(decision, now(53.04, 53))
  expect(found.after.best).toBe('shearwater-best')
  expect(found.flips).toBe(false)
  expect(consequence(decision, now(53.06, 53)).flips).toBe(true)
})
