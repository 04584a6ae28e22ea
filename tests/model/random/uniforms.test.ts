import { expect, test } from 'vitest'
import type { Stream } from '../../../src/model/random/index.ts'
import { stratified, Uniforms } from '../../../src/model/random/index.ts'

function take(count: number, seed: number, stream: Stream = []): number[] {
  const uniforms = new Uniforms(seed, stream)
  return Array.from({ length: count }, () => uniforms.next())
}

function chiSquare(counts: number[]): number {
  const expected = counts.reduce((a, b) => a + b) / counts.length
  return counts.reduce((sum, count) => sum + (count - expected) ** 2 / expected, 0)
}

function countIn(bins: number, values: Iterable<number>): number[] {
  const counts = Array(bins).fill(0)
  for (const value of values) counts[Math.floor(value * bins)]++
  return counts
}

test('the chi-square statistic used here is that of the worked example', () => {
  // checks.md 8.6 (Pearson 1900; Knuth, TAOCP 2, section 3.3.1): X² = 6.16.
  expect(chiSquare([93, 107, 98, 112, 90, 101, 104, 88, 110, 97])).toBeCloseTo(6.16, 9)
})

test.each([0, 1, 20_251, 2 ** 32 + 7, 2 ** 53 - 1])('256 bins of a stream with seed %i are evenly filled', (seed) => {
  // checks.md 8.6: the value for 255 degrees of freedom that 1 in 1000 exceeds. The seeds are fixed, so this can not flicker.
  expect(chiSquare(countIn(256, take(64_000, seed)))).toBeLessThan(330.5197436)
})

test('pairs of neighbours, and pairs across neighbouring streams and seeds, are evenly spread', () => {
  const one = take(64_000, 3, [1])
  const pairings = [
    one.map((value, i) => [value, one[(i + 1) % one.length]!] as const),
    take(64_000, 3, [2]).map((value, i) => [value, one[i]!] as const),
    take(64_000, 3, [1, 1]).map((value, i) => [value, one[i]!] as const),
    take(64_000, 4, [1]).map((value, i) => [value, one[i]!] as const),
  ]
  for (const pairs of pairings) {
    const cells = pairs.map(([x, y]) => (Math.floor(x * 16) + y) / 16)
    expect(chiSquare(countIn(256, cells))).toBeLessThan(330.5197436)
  }
})

test('ten bins of the strata of one stream hold the same number each', () => {
  expect(countIn(10, stratified(1000, 5, 0))).toEqual(Array(10).fill(100))
})

test('every stratum holds one value, and the order depends on seed and stream alone', () => {
  const values = stratified(257, 11, 4)
  expect([...values].map((value) => Math.floor(value * 257)).sort((a, b) => a - b)).toEqual([...Array(257).keys()])
  expect(stratified(257, 11, 4)).toEqual(values)
  expect(stratified(257, 11, 5)).not.toEqual(values)
  expect(stratified(257, 12, 4)).not.toEqual(values)
})

test('two streams side by side form a Latin hypercube whose columns do not go together', () => {
  const a = stratified(20_000, 1, 0)
  const b = stratified(20_000, 1, 1)
  const cells = [...a].map((x, i) => (Math.floor(x * 16) + b[i]!) / 16)
  // Both margins are fixed, which leaves 15² degrees of freedom; 1 in 1000 by the Wilson–Hilferty approximation.
  expect(chiSquare(countIn(256, cells))).toBeLessThan(
    225 * (1 - 2 / (9 * 225) + 3.0902 * Math.sqrt(2 / (9 * 225))) ** 3,
  )
  const correlation = a.reduce((sum, x, i) => sum + (x - 0.5) * (b[i]! - 0.5), 0) / 20_000 / (1 / 12)
  expect(Math.abs(correlation)).toBeLessThan(4 / Math.sqrt(20_000))
})

test('a stratified mean is far nearer the truth than a plain one', () => {
  // The mean of u² is 1/3. Strata of width 1/n leave an error of about n^(-3/2); plain draws leave n^(-1/2).
  const mean = stratified(10_000, 9, 0).reduce((sum, u) => sum + u * u, 0) / 10_000
  expect(Math.abs(mean - 1 / 3)).toBeLessThan(4 * 10_000 ** -1.5)
})

test('values are strictly between 0 and 1, also the extremes of words and strata', () => {
  for (const value of [...take(100_000, 8), ...stratified(2 ** 21, 8, 0)]) {
    if (!(value > 0 && value < 1)) throw new Error(`${value} is not inside (0, 1)`)
  }
  expect(Math.min(...take(100_000, 8))).toBeGreaterThan(0)
})

test('whole numbers below a count come equally often', () => {
  const uniforms = new Uniforms(6)
  const counts = Array(10).fill(0)
  for (let i = 0; i < 50_000; i++) counts[uniforms.below(10)]++
  // checks.md 8.6: 1 in 100 for 9 degrees of freedom.
  expect(chiSquare(counts)).toBeLessThan(21.665994334)
})
