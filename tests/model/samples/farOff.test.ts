import { describe, expect, test } from 'vitest'
import { farOff, measured } from '../../../src/model/samples/index.ts'

describe('which measured times lie far off', () => {
  test('the median absolute deviation of 1 to 9 is 2.9652, as R’s mad(c(1:9)) prints in its manual (from memory)', () => {
    const found = farOff([1, 2, 3, 4, 5, 6, 7, 8, 9])!
    expect(found.median).toBe(5)
    expect(found.spread).toBeCloseTo(2.9652, 10)
    expect(found.indices).toEqual([])
  })

  test('1000 among 1, 3, 3, 6, 8, 10 and 10: the worked example of Leys et al. 2013 (from memory), 7 ± 3 · 5.1891', () => {
    const found = farOff([1, 3, 3, 6, 8, 10, 10, 1000])!
    expect(found.median).toBe(7)
    expect(found.spread).toBeCloseTo(5.1891, 10)
    expect([found.from, found.to]).toEqual([expect.closeTo(-8.5673, 4), expect.closeTo(22.5673, 4)])
    expect(found.indices).toEqual([7])
  })

  test('where the mean and standard deviation would let it pass: eight near 1.2 and one at 3', () => {
    const times = [1.1, 1.2, 1.3, 1.2, 1.15, 1.25, 1.2, 1.1, 3]
    const mean = times.reduce((sum, time) => sum + time, 0) / times.length
    const sd = Math.sqrt(times.reduce((sum, time) => sum + (time - mean) ** 2, 0) / times.length)
    expect(3).toBeLessThan(mean + 3 * sd)
    expect(farOff(times)!.indices).toEqual([8])
  })

  test('equal times make no other one an outlier for a tenth of a second: a hand is not more exact', () => {
    expect(farOff([2, 2, 2, 2, 2.29])!.indices).toEqual([])
    expect(farOff([2, 2, 2, 2, 2.31])!.indices).toEqual([4])
    expect(farOff([2, 2, 2, 2, 1.69])!.indices).toEqual([4])
  })

  test('of fewer than five nobody can say', () => {
    expect(farOff([1, 1, 1, 60])).toBeNull()
  })
})

describe('what becomes a Duration', () => {
  const trial = (seconds: number, struck: string | null = null) => ({
    id: String(seconds),
    seconds,
    at: '2026-11-25T17:00:00.000Z',
    struck,
  })
  test('the times that nobody struck, three at least', () => {
    expect(measured([trial(1), trial(2), trial(9, 'fell over'), trial(3)])).toEqual({
      kind: 'samples',
      seconds: [1, 2, 3],
    })
    expect(measured([trial(1), trial(2), trial(9, 'fell over')])).toBeNull()
  })
})
