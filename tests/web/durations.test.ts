import { expect, test } from 'vitest'
import type { Duration } from '../../src/model/documents/types.ts'
import { mean } from '../../src/model/duration/index.ts'
import { asKind, canMove, withMean } from '../../web/screens/designs/durations.ts'

const range: Duration = { kind: 'range', low: 1, likely: 2, high: 3 }

test('a bar dragged to twice its time stretches the whole range', () => {
  expect(withMean(range, 4)).toEqual({ kind: 'range', low: 2, likely: 4, high: 6 })
})

test('a dragged bar has the mean that was asked for, to the hundredth that is kept', () => {
  for (const duration of [range, { kind: 'fixed', seconds: 2 }, { kind: 'lognormal', median: 2, spread: 1.3 }] as const)
    expect(Math.abs(mean(withMean(duration, 3.3)) - 3.3)).toBeLessThanOrEqual(0.011)
})

test('measured times can not be dragged', () => {
  const measured: Duration = { kind: 'samples', seconds: [1, 2, 3] }
  expect(canMove(measured)).toBe(false)
  expect(withMean(measured, 9)).toBe(measured)
})

test('saying a time in another way keeps its mean', () => {
  const before: Duration = { kind: 'lognormal', median: 4, spread: 1 }
  expect(mean(asKind(before, 'fixed'))).toBe(4)
  expect(Math.abs(mean(asKind(before, 'range')) - 4)).toBeLessThanOrEqual(0.01)
  expect(mean(asKind(before, 'samples'))).toBeCloseTo(4, 9)
})

test('a bar of no time can be drawn out', () => {
  expect(withMean({ kind: 'range', low: 0, likely: 0, high: 0 }, 1.2)).toEqual({ kind: 'fixed', seconds: 1.2 })
})
