import fc from 'fast-check'
import type { Field, Point } from '../../../src/model/documents/types.ts'

/** A field for tests; footprint and clearance of 0 give a point robot. */
export function fieldWith(outlines: Point[][], size: Partial<Field> = {}): Field {
  return {
    length: 16,
    width: 8,
    clearance: 0,
    symmetry: 'mirror',
    obstacles: outlines.map((outline, i) => ({ id: `o${i}`, name: `Rock ${i}`, outline })),
    ...size,
  }
}

export function box(lowX: number, lowY: number, highX: number, highY: number): Point[] {
  return [
    [lowX, lowY],
    [highX, lowY],
    [highX, highY],
    [lowX, highY],
  ]
}

export const disc = (radius: number) => ({ length: 2 * radius, width: 2 * radius + 0.3 })

function turned(outline: Point[], angle: number, [x, y]: Point): Point[] {
  return outline.map(([u, v]) => [
    x + u * Math.cos(angle) - v * Math.sin(angle),
    y + u * Math.sin(angle) + v * Math.cos(angle),
  ])
}

const decimetres = (low: number, high: number) => fc.integer({ min: low, max: high }).map((value) => value / 10)
export const anyPoint: fc.Arbitrary<Point> = fc.tuple(decimetres(5, 155), decimetres(5, 75))

/** Boxes, triangles and L shapes on a grid of 10 cm, so that collinear edges, equal gaps and overlaps are common. */
const anyOutline: fc.Arbitrary<Point[]> = fc
  .record({
    at: anyPoint,
    angle: fc.oneof(fc.constantFrom(0, Math.PI / 2, Math.PI), fc.double({ min: 0, max: 6.28, noNaN: true })),
    long: decimetres(8, 35),
    wide: decimetres(6, 30),
    thick: decimetres(2, 5),
    shape: fc.constantFrom('box', 'triangle', 'L'),
    clockwise: fc.boolean(),
  })
  .map(({ at, angle, long, wide, thick, shape, clockwise }) => {
    const corners: Record<string, Point[]> = {
      box: box(0, 0, long, wide),
      triangle: [
        [0, 0],
        [long, 0],
        [thick, wide],
      ],
      L: [
        [0, 0],
        [long, 0],
        [long, thick],
        [thick, thick],
        [thick, wide],
        [0, wide],
      ],
    }
    const outline = turned(corners[shape]!, angle, at)
    return clockwise ? outline.reverse() : outline
  })

export const anyField = fc.array(anyOutline, { minLength: 1, maxLength: 4 }).map((outlines) => fieldWith(outlines))
export const anyRadius = fc.oneof(decimetres(1, 6), fc.double({ min: 0.05, max: 0.6, noNaN: true }))
