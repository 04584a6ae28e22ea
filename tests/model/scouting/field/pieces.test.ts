import { expect, test } from 'vitest'
import type { Duration } from '../../../../src/model/documents/types.ts'
import { distributionOf } from '../../../../src/model/duration/index.ts'
import { shiftedBy } from '../../../../src/model/scouting/field/index.ts'
import { learningOf } from '../../../../src/model/scouting/field/learning.ts'
import { shiftsFor } from '../../../../src/model/scouting/field/shift.ts'

// Wright 1936: a curve of 80 % takes four fifths of the time after twice as many.
test('a power law of practice is found again, whatever its runs weigh', () => {
  const runs = [1, 2, 3, 5, 8, 13].map((number) => ({
    number,
    trips: 1 + (number % 4),
    ratio: 1.7 * number ** Math.log2(0.8),
  }))
  const found = learningOf(runs)!
  expect(found.doubling).toBeCloseTo(0.8, 9)
  expect(found.first).toBeCloseTo(1.7, 9)
  expect(found.interval95[1] - found.interval95[0]).toBeLessThan(1e-6)
})

test('what goes up and down is no practice: the interval holds 1', () => {
  const found = learningOf([1.2, 0.9, 1.1, 1, 1.2, 0.9].map((ratio, i) => ({ number: i + 1, trips: 5, ratio })))!
  expect(found.interval95[0]).toBeLessThan(1)
  expect(found.interval95[1]).toBeGreaterThan(1)
  expect(learningOf([1, 2, 3].map((number) => ({ number, trips: 5, ratio: 1 })))).toBeNull()
})

const durations: Duration[] = [
  { kind: 'fixed', seconds: 2 },
  { kind: 'range', low: 1, likely: 2, high: 4 },
  { kind: 'lognormal', median: 2, spread: 1.4 },
  { kind: 'samples', seconds: [1, 2, 4] },
]

test.each(durations)('a shifted $kind has its mean moved and its spread kept', (duration) => {
  for (const seconds of [-0.5, 1.5]) {
    const [before, after] = [duration, shiftedBy(duration, seconds)].map(distributionOf)
    expect(after!.mean - before!.mean).toBeCloseTo(seconds, 3)
    expect(after!.variance).toBeCloseTo(before!.variance, 2)
  }
})

const trip = {
  stages: [
    { id: 'beside', name: 'Beside the drive', duration: { kind: 'fixed' as const, seconds: 1 }, after: [] },
    {
      id: 'each',
      name: 'For each',
      duration: { kind: 'fixed' as const, seconds: 1 },
      after: ['drive', 'beside'],
      each: true,
    },
  ],
}
const drive = { seconds: 4, pace: { kind: 'fixed' as const, seconds: 1 } }

test('a stage beside the drive has to outlast it, one for each piece moves the leg by as much for each', () => {
  // 4 s of driving, then 1 s for each of two pieces: 6 s; 3 s more are wanted.
  expect(shiftsFor([{ spec: { trip, drive, load: 2 }, share: 1 }], 3, 1)).toEqual([
    { stage: 'beside', seconds: expect.closeTo(6, 1) },
    { stage: 'each', seconds: expect.closeTo(1.5, 1) },
  ])
})

test('a stage that can not give so much says so', () => {
  expect(shiftsFor([{ spec: { trip, drive, load: 2 }, share: 1 }], -1.5, 1)).toEqual([
    { stage: 'beside', seconds: null },
    { stage: 'each', seconds: expect.closeTo(-0.75, 1) },
  ])
})
