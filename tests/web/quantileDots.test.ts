import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { dotsBelow, quantileDots, stackDots } from '../../web/charts/quantileDots.ts'

describe('quantile dots', () => {
  test('four equal atoms give five dots of twenty each', () => {
    const dots = quantileDots([
      [10, 0.25],
      [20, 0.25],
      [30, 0.25],
      [40, 0.25],
    ])
    expect(dots).toEqual([...Array(5).fill(10), ...Array(5).fill(20), ...Array(5).fill(30), ...Array(5).fill(40)])
  })

  test('a chance of 15 % is 3 of 20 dots, a chance of 2 % none, one of 3 % one', () => {
    const tail = (probability: number) =>
      dotsBelow(
        quantileDots([
          [0, probability],
          [50, 1 - probability],
        ]),
        25,
      )
    expect(tail(0.15)).toBe(3)
    // The first dot stands for the middle of the lowest 5 %: 2 % end before it, 3 % after it.
    expect(tail(0.02)).toBe(0)
    expect(tail(0.03)).toBe(1)
  })

  test('the dots of a straight-line distribution are its quantiles at 2.5, 7.5, … 97.5 %', () => {
    const uniform = Array.from({ length: 1000 }, (_, index): [number, number] => [(index + 0.5) / 1000, 0.001])
    quantileDots(uniform).forEach((dot, index) => {
      expect(Math.abs(dot - (index + 0.5) / 20)).toBeLessThanOrEqual(0.0011)
    })
  })

  test('whatever the distribution, the dots below a value are within half a dot of its chance', () => {
    const distributions = fc.array(fc.tuple(fc.integer({ min: 0, max: 200 }), fc.integer({ min: 1, max: 50 })), {
      minLength: 1,
      maxLength: 30,
    })
    fc.assert(
      fc.property(distributions, fc.integer({ min: 0, max: 200 }), (pairs, value) => {
        const total = pairs.reduce((sum, [, weight]) => sum + weight, 0)
        const distribution = [...pairs]
          .sort((a, b) => a[0] - b[0])
          .map(([points, weight]): [number, number] => [points, weight / total])
        const chance = distribution.reduce((sum, [points, p]) => (points < value ? sum + p : sum), 0)
        const dots = quantileDots(distribution)
        expect(dots).toHaveLength(20)
        expect(Math.abs(dotsBelow(dots, value) / 20 - chance)).toBeLessThanOrEqual(1 / 40 + 1e-9)
      }),
    )
  })

  test('dots of one column stand on each other, and none is lost', () => {
    const dots = stackDots([1, 1.5, 2, 5.9, 4.1], 2)
    expect(dots).toEqual([
      { value: 1, column: 1, level: 0 },
      { value: 1.5, column: 1, level: 1 },
      { value: 2, column: 3, level: 0 },
      { value: 5.9, column: 5, level: 0 },
      { value: 4.1, column: 5, level: 1 },
    ])
  })

  test('dots below the edge stand left of it, all others right of it', () => {
    for (const dot of stackDots([1, 2.4, 2.6, 3, 7.2], 2, 2.5)) expect(dot.column < 2.5).toBe(dot.value < 2.5)
  })
})
