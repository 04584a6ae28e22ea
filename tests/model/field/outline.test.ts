import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Point } from '../../../src/model/documents/types.ts'
import {
  obstaclesMapOntoEachOther,
  obstaclesWithoutPartner,
  outlineFault,
  selfCrossing,
  symmetricImage,
} from '../../../src/model/field/index.ts'
import { anyField, anyPoint, box, fieldWith } from './fields.ts'

describe('an outline', () => {
  const faults: [string, Point[], string][] = [
    [
      'with two corners',
      [
        [0, 0],
        [1, 0],
      ],
      'An outline needs at least 3 corners, and this one has 2.',
    ],
    [
      'with a repeated corner',
      [
        [0, 0],
        [1, 0],
        [1, 1],
        [0, 0],
      ],
      'Corners 1 and 4 are the same point.',
    ],
    [
      'like a bow tie',
      [
        [0, 0],
        [1, 1],
        [1, 0],
        [0, 1],
      ],
      'The edges after corners 1 and 3 cross or touch.',
    ],
    [
      'with a corner on an edge',
      [
        [0, 0],
        [4, 0],
        [4, 2],
        [2, 0],
        [0, 2],
      ],
      'The edges after corners 1 and 3 cross or touch.',
    ],
    [
      'with a spike',
      [
        [0, 0],
        [2, 0],
        [2, 2],
        [2, 1],
        [0, 1],
      ],
      'At corner 3 the outline runs back along itself.',
    ],
    [
      'on a line',
      [
        [0, 0],
        [1, 1],
        [2, 2],
      ],
      'At corner 3 the outline runs back along itself.',
    ],
  ]
  test.each(faults)('%s is refused', (_, outline, message) => {
    expect(outlineFault(outline)?.text).toBe(message)
    expect(selfCrossing(outline)).toBe(true)
  })

  test('whose last edge crosses the first is refused wherever it begins', () => {
    const bow: Point[] = [
      [0, 0],
      [2, 2],
      [2, 0],
      [0, 2],
    ]
    for (let i = 0; i < 4; i++) expect(selfCrossing([...bow.slice(i), ...bow.slice(0, i)])).toBe(true)
  })

  test('with corners in line, concave ones or either direction is fine', () => {
    const outline: Point[] = [
      [0, 0],
      [1, 0],
      [2, 0],
      [2, 0.5],
      [0.5, 0.5],
      [0.5, 2],
      [0, 2],
    ]
    expect(outlineFault(outline)).toBeNull()
    expect(outlineFault([...outline].reverse())).toBeNull()
  })

  test('with thousands of corners is refused at once', () => {
    const circle = Array.from({ length: 50_000 }, (_, i): Point => [Math.cos(i / 8000), Math.sin(i / 8000)])
    expect(outlineFault(circle)?.text).toBe('An outline can have up to 300 corners, and this one has 50000.')
  })

  test('that is simple stays simple, and one with two corners swapped does not', () => {
    fc.assert(
      fc.property(anyField, ({ obstacles }) => {
        for (const { outline } of obstacles) {
          expect(selfCrossing(outline)).toBe(false)
          if (outline.length < 4) continue
          const [a, b, ...rest] = outline
          // Swapping two neighbours of a box crosses the edges beside them.
          if (outline.length === 4) expect(selfCrossing([b!, a!, ...rest])).toBe(true)
        }
      }),
      { seed: 1 },
    )
  })
})

describe("the field's symmetry", () => {
  const size = { length: 16, width: 8 }

  test('mirrors across the middle line or turns by half a turn', () => {
    expect(symmetricImage({ ...size, symmetry: 'mirror' }, [3, 1])).toEqual([13, 1])
    expect(symmetricImage({ ...size, symmetry: 'rotate' }, [3, 1])).toEqual([13, 7])
  })

  test('twice gives the point back', () => {
    fc.assert(
      fc.property(anyPoint, fc.constantFrom('mirror' as const, 'rotate' as const), (point, symmetry) => {
        const field = { ...size, symmetry }
        const [x, y] = symmetricImage(field, symmetricImage(field, point))
        expect(x).toBeCloseTo(point[0], 12)
        expect(y).toBeCloseTo(point[1], 12)
      }),
    )
  })

  const corner: Point[] = [
    [2, 1],
    [4, 1],
    [4, 2],
    [3, 2],
    [3, 3],
    [2, 3],
  ]

  test.each(['mirror', 'rotate'] as const)(
    '%s: obstacles match from any first corner and in either direction',
    (symmetry) => {
      const image = corner.map((each) => symmetricImage({ ...size, symmetry }, each))
      for (let i = 0; i < image.length; i++) {
        const shifted = [...image.slice(i), ...image.slice(0, i)]
        for (const outline of [shifted, [...shifted].reverse()]) {
          expect(obstaclesMapOntoEachOther(fieldWith([corner, outline], { symmetry }))).toBe(true)
        }
      }
      const rounded = image.map(([x, y]): Point => [x + 9e-7, y - 9e-7])
      expect(obstaclesMapOntoEachOther(fieldWith([corner, rounded], { symmetry }))).toBe(true)
      const off = image.map(([x, y], i): Point => [i === 3 ? x + 3e-6 : x, y])
      expect(obstaclesWithoutPartner(fieldWith([corner, off], { symmetry }))).toEqual(['o0', 'o1'])
    },
  )

  test('an image of the other kind is no partner, and an obstacle in the middle is its own', () => {
    const mirrored = corner.map((each) => symmetricImage({ ...size, symmetry: 'mirror' }, each))
    const field = fieldWith([corner, mirrored, box(7, 3, 9, 5)], { symmetry: 'rotate' })
    expect(obstaclesWithoutPartner(field)).toEqual(['o0', 'o1'])
    expect(obstaclesWithoutPartner({ ...field, symmetry: 'mirror' })).toEqual([])
  })
})
