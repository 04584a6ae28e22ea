import { expect, test } from 'vitest'
import { compensatedSum, Moments } from '../../../src/model/random/index.ts'

test('a million tiny terms are not lost beside a large one', () => {
  // checks.md 8.8a: exact 1.0000000001; left to right in doubles gives exactly 1.
  const values = [1, ...Array(1_000_000).fill(1e-16)]
  expect(values.reduce((a, b) => a + b, 0)).toBe(1)
  expect(Math.abs(compensatedSum(values) - 1.0000000001)).toBeLessThanOrEqual(2e-16)
})

test('small terms survive large ones that cancel', () => {
  // checks.md 8.8b (Neumaier 1974): 2; Kahan's own method gives 0.
  expect(compensatedSum([1, 1e100, 1, -1e100])).toBe(2)
})

test('the variance of numbers far from 0 keeps its digits', () => {
  // checks.md 8.8c: mean 1000000010, sample variance 30; the sum of squares fails in double precision.
  const moments = new Moments()
  for (const value of [4, 7, 13, 16]) moments.add(1e9 + value)
  expect(moments.mean).toBe(1_000_000_010)
  expect(moments.sampleVariance).toBe(30)
  expect(moments.standardError).toBeCloseTo(Math.sqrt(30 / 4), 12)
})
