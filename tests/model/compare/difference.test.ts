import { describe, expect, it } from 'vitest'
import { beats, type Lattice } from '../../../src/model/compare/beats.ts'
import { chanceToReach, differenceOf } from '../../../src/model/compare/difference.ts'

const choose = (n: number, k: number): number => (k === 0 ? 1 : (choose(n, k - 1) * (n - k + 1)) / k)
const binomial = (n: number, p: number): Lattice =>
  Array.from({ length: n + 1 }, (_, k) => [k, choose(n, k) * p ** k * (1 - p) ** (n - k)])

describe('the difference of two independent distributions', () => {
  it('of Bin(n, p) and Bin(m, 1 − p) is Bin(n + m, p) moved down by m, since m − Bin(m, 1 − p) is Bin(m, p)', () => {
    const found = differenceOf(binomial(7, 0.3), binomial(5, 0.7))
    const closed = binomial(12, 0.3).map(([k, chance]) => [k - 5, chance])
    expect(found.map(([points]) => points)).toEqual(closed.map(([points]) => points))
    found.forEach(([, chance], k) => void expect(chance).toBeCloseTo(closed[k]![1]!, 13))
  })

  it('is every pair with the product of its chances, and points that differ by rounding alone are one', () => {
    const own: Lattice = [
      [0.3, 0.25],
      [2, 0.75],
    ]
    const other: Lattice = [
      [0.1, 0.4],
      [1.8, 0.6],
    ]
    // 2 − 1.8 and 0.3 − 0.1 are both 0.2, though not to the last bit.
    expect(2 - 1.8).not.toBe(0.3 - 0.1)
    const found = differenceOf(own, other)
    expect(found.map(([points]) => points)).toEqual([-1.5, 0.2, 1.9])
    ;[0.15, 0.55, 0.3].forEach((chance, k) => void expect(found[k]![1]).toBeCloseTo(chance, 14))
  })

  it('agrees with beats, has the difference of the means, and turns around with its sign when the two are swapped', () => {
    const [own, other] = [binomial(9, 0.45), binomial(6, 0.7)]
    const found = differenceOf(own, other)
    const above = found.filter(([points]) => points > 0).reduce((sum, [, chance]) => sum + chance, 0)
    const tie = found.find(([points]) => points === 0)![1]
    expect(above + tie / 2).toBeCloseTo(beats(own, other), 13)
    expect(found.reduce((sum, [points, chance]) => sum + points * chance, 0)).toBeCloseTo(9 * 0.45 - 6 * 0.7, 12)
    const back = differenceOf(other, own).reverse()
    back.forEach(([points, chance], k) => {
      expect(points).toBe(0 - found[k]![0])
      expect(chance).toBeCloseTo(found[k]![1], 14)
    })
  })

  it('is a whole of 1, even where the tails of both were cut', () => {
    const cut: Lattice = [
      [1, 0.5],
      [3, 0.4],
    ]
    expect(differenceOf(cut, cut).reduce((sum, [, chance]) => sum + chance, 0)).toBeCloseTo(1, 14)
  })
})

describe('the chance to reach points', () => {
  it('counts the points themselves: two coins give at least 1 with 3/4, at least 2 with 1/4', () => {
    const coins = binomial(2, 0.5)
    expect([0, 1, 2, 2.5].map((points) => chanceToReach(coins, points))).toEqual([1, 0.75, 0.25, 0])
  })

  it('is the upper tail of a binomial: at least 8 of 10 at 0.5 is 56/1024', () => {
    expect(chanceToReach(binomial(10, 0.5), 8)).toBeCloseTo((45 + 10 + 1) / 1024, 14)
  })

  it('takes points that differ by rounding alone as reached', () => {
    expect(chanceToReach([[0.1 + 0.7, 1]], 0.8)).toBe(1)
    expect(0.1 + 0.7).toBeLessThan(0.8)
  })
})
