import { expect, it } from 'vitest'
import { convolveByTransform, geometricSum } from '../../../src/model/leg/fourier.ts'

const row = (length: number, seed: number): Float64Array => {
  const raw = Float64Array.from({ length }, (_, i) => 1 + Math.sin(seed * (i + 1) ** 2))
  const sum = raw.reduce((total, x) => total + x, 0)
  return raw.map((x) => x / sum)
}

it.each([
  [1, 1],
  [3, 5],
  [64, 65],
  [700, 1301],
])('multiplies out rows of %i and %i', (n, m) => {
  const a = row(n, 0.3)
  const b = row(m, 0.7)
  const out = convolveByTransform(a, b)
  expect(out.length).toBe(n + m - 1)
  for (let k = 0; k < out.length; k++) {
    let sum = 0
    for (let i = Math.max(0, k - m + 1); i <= Math.min(k, n - 1); i++) sum += (a[i] as number) * (b[k - i] as number)
    expect(Math.abs((out[k] as number) - sum)).toBeLessThan(1e-15)
  }
})

it('sums a geometric number of draws, counted up to the most', () => {
  const one = Float64Array.of(0, 0.25, 0.75)
  const [success, most] = [0.6, 4]
  const expected = new Float64Array(9)
  let power = Float64Array.of(1)
  for (let k = 0; k <= most; k++) {
    const weight = (1 - success) ** k * (k < most ? success : 1)
    for (const [i, m] of power.entries()) expected[i] = (expected[i] as number) + weight * m
    const next = new Float64Array(power.length + 2)
    for (const [i, m] of power.entries())
      for (const [j, p] of one.entries()) next[i + j] = (next[i + j] as number) + m * p
    power = next
  }
  const sum = geometricSum(one, success, most, 9)
  for (let i = 0; i < 9; i++) expect(sum[i]).toBeCloseTo(expected[i] as number, 14)
})
