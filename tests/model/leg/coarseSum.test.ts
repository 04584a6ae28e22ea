import { expect, test } from 'vitest'
import { massOnGrid } from '../../../src/model/duration/grid.ts'
import { distributionOf } from '../../../src/model/duration/index.ts'
import { coarseSum } from '../../../src/model/leg/coarseSum.ts'
import { type Pmf, regrid } from '../../../src/model/leg/pmf.ts'

const lognormal = massOnGrid(distributionOf({ kind: 'lognormal', median: 2.3, spread: 1.6 }), 0.01)
const range = massOnGrid(distributionOf({ kind: 'range', low: 0.33, likely: 1, high: 4 }), 0.01)
const short: Pmf = { first: 3, mass: Float64Array.of(0.25, 0, 0.75) }
const single: Pmf = { first: 17, mass: Float64Array.of(1) }

/** Every pair of points added by itself, and the sum then shared between its neighbours on the coarse grid. */
function byHand(a: Pmf, b: Pmf, ratio: number): Float64Array {
  const mass = new Float64Array(a.mass.length + b.mass.length - 1)
  for (const [i, p] of a.mass.entries())
    for (const [j, q] of b.mass.entries()) mass[i + j] = (mass[i + j] as number) + p * q
  const { first, mass: shared } = regrid({ first: a.first + b.first, mass }, ratio)
  const out = new Float64Array(first + shared.length)
  out.set(shared, first)
  return out
}

test.each([
  ['two long ones with thinned tails', lognormal, range],
  ['a short one that comes first', short, range],
  ['a short one that follows', lognormal, short],
  ['a single point first', single, lognormal],
  ['a single point last', short, single],
  ['two single points', single, single],
])('a sum on a grid ten times as coarse is the fine one put there: %s', (_, a, b) => {
  const { first, mass } = coarseSum(a, b, 10)
  const wanted = byHand(a, b, 10)
  expect(first + mass.length).toBe(wanted.length)
  for (let k = 0; k < wanted.length; k++) expect(k < first ? 0 : mass[k - first]).toBeCloseTo(wanted[k] as number, 14)
})
