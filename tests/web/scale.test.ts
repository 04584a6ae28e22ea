import fc from 'fast-check'
import { expect, test } from 'vitest'
import { linearScale, ticks } from '../../web/charts/scale.ts'

test('ticks are round numbers inside the domain', () => {
  expect(ticks([0, 135], 5)).toEqual([0, 20, 40, 60, 80, 100, 120])
  expect(ticks([0, 9.5], 5)).toEqual([0, 2, 4, 6, 8])
  expect(ticks([-1.2, 3.1], 4)).toEqual([-1, 0, 1, 2, 3])
  expect(ticks([0.5, 0.95], 4)).toEqual([0.5, 0.6, 0.7, 0.8, 0.9])
  expect(ticks([7, 7], 4)).toEqual([7])
})

test('a scale and its inverse cancel, rising or falling', () => {
  const numbers = fc.double({ min: -500, max: 500, noNaN: true })
  fc.assert(
    fc.property(numbers, numbers, fc.double({ min: 0, max: 1, noNaN: true }), (a, b, share) => {
      fc.pre(Math.abs(a - b) > 1e-3)
      const scale = linearScale([a, b], [600, 10])
      const value = a + share * (b - a)
      expect(scale.invert(scale(value))).toBeCloseTo(value, 6)
    }),
  )
})
