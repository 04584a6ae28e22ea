import { describe, expect, test } from 'vitest'
import { gridOf, type Known, keyOf, side, steps, wanted } from '../../../web/worker/mapLevels.ts'

/** Fills what is wanted at each step up to `until`, and says how many places that took. */
function grown(f: (i: number, j: number) => number[], until: number): { known: Known; asked: number[] } {
  const known: Known = new Map()
  const asked: number[] = []
  for (const step of steps) {
    if (step < until) break
    const places = wanted(known, step)
    asked.push(places.length)
    for (const [i, j] of places) known.set(keyOf(i, j), f(i, j))
  }
  return { known, asked }
}

describe('a map that grows finer', () => {
  test('asks for 5 × 5 places, then what 9 × 9 and 17 × 17 have more, none twice', () => {
    const { known, asked } = grown(() => [1, 0], 2)
    expect(asked).toEqual([25, 81 - 25, 289 - 81])
    expect(known.size).toBe(289)
    expect(gridOf(known, 2).rows).toHaveLength(17)
  })

  test('asks at the finest step along the border alone: a straight one crosses 16 squares of 5 new places each', () => {
    // The border i = 15 runs through the squares from 14 to 16; neighbours share the places on their common sides.
    const { asked } = grown((i) => [i, 15], 1)
    expect(asked[3]).toBe(16 * 5 - 15)
    const none = grown(() => [1, 0], 1)
    expect(none.asked[3]).toBe(0)
  })

  test('lays what was not planned straight between its neighbours, so that straight options stay as they are', () => {
    const { known } = grown((i, j) => [i + 2 * j, 40], 1)
    const { size, rows } = gridOf(known, 1)
    expect(size).toBe(side)
    for (const [i, j] of [
      [1, 0],
      [31, 30],
      [7, 9],
      [32, 32],
    ] as const)
      expect(rows[j]![i]).toEqual([i + 2 * j, 40])
  })
})
