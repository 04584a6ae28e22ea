import type { Field, Point } from '../documents/types.ts'

/** Corners this near each other (m) are the same: drawings are rounded. */
const SAME = 1e-6

/** Where the other alliance sees a point: mirrored across the field's middle line, or turned by half a turn. */
export function symmetricImage(field: Pick<Field, 'length' | 'width' | 'symmetry'>, [x, y]: Point): Point {
  return [field.length - x, field.symmetry === 'mirror' ? y : field.width - y]
}

type Drawing = Pick<Field, 'length' | 'width' | 'symmetry' | 'obstacles'>

/**
 * The ids of obstacles without a partner: whose image under the field's symmetry is no obstacle's outline, whatever
 * corner it begins at and whichever way it runs, within 1e-6 m. An obstacle may be its own partner.
 */
export function obstaclesWithoutPartner(field: Drawing): string[] {
  return field.obstacles
    .filter(({ outline }) => {
      const image = outline.map((corner) => symmetricImage(field, corner))
      return !field.obstacles.some((other) => isSameOutline(image, other.outline))
    })
    .map(({ id }) => id)
}

/** Whether both alliances see the same field: every obstacle has a partner. */
export function obstaclesMapOntoEachOther(field: Drawing): boolean {
  return obstaclesWithoutPartner(field).length === 0
}

function isSameOutline(a: readonly Point[], b: readonly Point[]): boolean {
  const count = a.length
  if (count !== b.length) return false
  return [1, -1].some((direction) =>
    b.some((_, shift) =>
      a.every(([x, y], i) => {
        const [u, v] = b[(((shift + direction * i) % count) + count) % count]!
        return Math.abs(x - u) <= SAME && Math.abs(y - v) <= SAME
      }),
    ),
  )
}
