import { expect } from 'vitest'

/** Within a share of the expected value; absolutely where it is 0. */
export function near(value: number, expected: number, relative: number): void {
  const off = Math.abs(value - expected)
  expect(off / (expected === 0 ? 1 : Math.abs(expected)), `${value} for ${expected}`).toBeLessThanOrEqual(relative)
}

/** All within an absolute distance. */
export function allNear(values: readonly number[], expected: readonly number[], distance: number): void {
  expect(values).toHaveLength(expected.length)
  for (const [i, value] of values.entries())
    expect(Math.abs(value - (expected[i] as number)), `${i}: ${value} for ${expected[i]}`).toBeLessThanOrEqual(distance)
}
