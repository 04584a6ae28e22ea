import { describe, expect, test } from 'vitest'
import { type MapRows, mapRegions, readMap } from '../../../web/charts/mapRegions.ts'
import { linearScale } from '../../../web/charts/scale.ts'

/** A map of 5 × 5 values of functions over the unit square, drawn on a square of 100. */
const last = 4
const mapOf = (...options: ((x: number, y: number) => number)[]): MapRows =>
  Array.from({ length: last + 1 }, (_, j) =>
    Array.from({ length: last + 1 }, (_, i) => options.map((f) => f(i / last, j / last))),
  )
const scale = linearScale([0, last], [0, 100])

describe('where which option is the best', () => {
  test('is half of the map on each side of a straight border, which lies where the two are equal', () => {
    const { shares, border, labels } = mapRegions(
      mapOf(
        (x) => x,
        () => 0.4,
      ),
      scale,
      scale,
    )
    expect(shares[0]).toBeCloseTo(0.6, 12)
    expect(shares[1]).toBeCloseTo(0.4, 12)
    // Every end of a piece of the border is at x = 40.
    const ends = [...border.matchAll(/[ML]([\d.]+) [\d.]+/g)].map(([, x]) => Number(x))
    expect(ends.length).toBeGreaterThan(7)
    expect(new Set(ends)).toEqual(new Set([40]))
    expect(labels[0]).toEqual({ x: 70, y: 50 })
    expect(labels[1]).toEqual({ x: 20, y: 50 })
  })

  test('of three straight options is exact: x against y against 0.5 takes 3/8, 3/8 and 1/4', () => {
    // Above 0.5, x is best where x > y: the square's lower right triangle less the corner below 0.5: 1/2 − 1/8.
    const { shares } = mapRegions(
      mapOf(
        (x) => x,
        (_, y) => y,
        () => 0.5,
      ),
      scale,
      scale,
    )
    expect(shares.map((share) => Number(share.toFixed(10)))).toEqual([0.375, 0.375, 0.25])
  })

  test('has one option alone where it leads everywhere, without a border', () => {
    const found = mapRegions(
      mapOf(
        (x, y) => x + y,
        () => -1,
      ),
      scale,
      scale,
    )
    expect(found.shares).toEqual([1, 0])
    expect(found.border).toBe('')
    expect(found.areas[1]).toBe('')
    expect(found.labels[1]).toBeNull()
  })

  test('covers the map once: the areas of curved options add up to the whole', () => {
    const { shares } = mapRegions(
      mapOf(
        (x, y) => Math.sin(5 * x) + y,
        (x, y) => Math.cos(4 * y) - x,
        (x, y) => x * y,
      ),
      scale,
      scale,
    )
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12)
    expect(Math.min(...shares)).toBeGreaterThan(0)
  })
})

test('reading a place of the map is exact for straight options, in every corner and in between', () => {
  const rows = mapOf(
    (x, y) => 3 * x - 2 * y + 1,
    (x, y) => 10 * y - x,
  )
  for (const [x, y] of [
    [0, 0],
    [1, 1],
    [1, 0],
    [0, 1],
    [0.31, 0.77],
    [0.9, 0.12],
  ] as const) {
    const [a, b] = readMap(rows, x, y)
    expect(a).toBeCloseTo(3 * x - 2 * y + 1, 12)
    expect(b).toBeCloseTo(10 * y - x, 12)
  }
})
