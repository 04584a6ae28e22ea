import type { Field, Point } from '../../../../src/model/documents/types.ts'
import { symmetricImage } from '../../../../src/model/field/index.ts'

/** Corners this near each other (m) are the same: drawings are rounded. */
const near = 1e-6

/** The obstacle that the other alliance sees in an obstacle's place. */
export interface Partner {
  /** Index of the partner; the obstacle's own where it is its own partner. */
  index: number
  /** For each corner of the obstacle, the corner of the partner that is its image. */
  corners: number[]
}

const isImage = (image: Point, [x, y]: Point): boolean =>
  Math.abs(image[0] - x) <= near && Math.abs(image[1] - y) <= near

function cornersOf(images: readonly Point[], outline: readonly Point[]): number[] | null {
  const count = images.length
  if (outline.length !== count) return null
  for (const direction of [1, -1])
    for (let shift = 0; shift < count; shift++) {
      const corners = images.map((_, corner) => (((shift + direction * corner) % count) + count) % count)
      if (images.every((image, corner) => isImage(image, outline[corners[corner]!]!))) return corners
    }
  return null
}

/** Finds an obstacle's partner under the field's symmetry; null where it has none. */
export function partnerOf(field: Field, index: number): Partner | null {
  const images = field.obstacles[index]!.outline.map((corner) => symmetricImage(field, corner))
  const order = [index, ...field.obstacles.keys()]
  for (const other of order) {
    const corners = cornersOf(images, field.obstacles[other]!.outline)
    if (corners) return { index: other, corners }
  }
  return null
}

/** A coordinate to a tenth of a millimetre, so that sums of steps stay round numbers. */
export const rounded = (value: number): number => Math.round(value * 10_000) / 10_000 + 0

export const roundedPoint = ([x, y]: Point): Point => [rounded(x), rounded(y)]

export const imageOf = (field: Field, point: Point): Point => roundedPoint(symmetricImage(field, point))
