import { describe, expect, it } from 'vitest'
import { plan } from '../../../../src/model/plan/index.ts'
import { inLongForm } from '../../../browser/longForm.ts'
import { bestByEnumeration } from './enumeration.ts'
import { bestByIntegerProgram } from './integerProgram.ts'
import { documents, randomTickGame } from './tickGame.ts'

const planned = (rules: ReturnType<typeof randomTickGame>) => {
  const { game, option } = documents(rules)
  return plan(game, option).expected.total
}

const seeds = (first: number, count: number) => Array.from({ length: count }, (_, i) => first + i)

// Reference: HiGHS, a general-purpose solver of mixed-integer programs, on the network of (state, time left).
describe('a plan of deterministic cycles', () => {
  // The solver takes as long for the fourth as for all others together.
  it.each(seeds(1, 12).filter((seed) => inLongForm || seed !== 4))(
    'is worth what the integer program finds, random game %d',
    async (seed) => {
      const rules = randomTickGame(seed, 'large')
      expect(planned(rules)).toBeCloseTo(await bestByIntegerProgram(rules), 6)
    },
  )

  it.each(seeds(101, 24))('is worth what trying out every sequence of legs finds, random game %d', async (seed) => {
    const rules = randomTickGame(seed, 'small')
    const tried = bestByEnumeration(rules)
    expect(planned(rules)).toBeCloseTo(tried, 6)
    // The two references must agree as well, or neither is one.
    expect(await bestByIntegerProgram(rules)).toBeCloseTo(tried, 6)
  })

  it('has random games that are not all trivial', () => {
    const values = seeds(1, 24).map((seed) => planned(randomTickGame(seed, 'large')))
    expect(values.filter((value) => value > 8).length).toBeGreaterThan(16)
    expect(new Set(values.map((value) => value.toFixed(3))).size).toBeGreaterThan(16)
  })
})
