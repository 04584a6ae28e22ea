import { inner } from '../documents/sentences.ts'
import type { Point } from '../documents/types.ts'
import type { Inner } from '../said.ts'
import { squaredDistanceOfSegments } from './distances.ts'
import { MOST_CORNERS, signedArea } from './polygon.ts'

/** Corners and edges nearer than this (m) count as touching: far below what anyone measures on a field. */
const SAME = 1e-9

/** What is wrong with an outline, as a sentence with its parts, or null: it must be a simple polygon that encloses an area. */
export function outlineFault(outline: readonly Point[]): Inner | null {
  const count = outline.length
  if (count < 3) return inner('fewCorners', { count })
  if (count > MOST_CORNERS) return inner('manyCorners', { most: MOST_CORNERS, count })
  for (let i = 0; i < count; i++) {
    for (let j = i + 1; j < count; j++) {
      if (Math.hypot(outline[i]![0] - outline[j]![0], outline[i]![1] - outline[j]![1]) < SAME) {
        return inner('sameCorners', { one: i + 1, other: j + 1 })
      }
    }
  }
  for (let i = 0; i < count; i++) {
    if (foldsBack(outline[i]!, outline[(i + 1) % count]!, outline[(i + 2) % count]!)) {
      return inner('foldsBack', { corner: ((i + 1) % count) + 1 })
    }
    // Neighbours share a corner; all other edges must stay apart.
    for (let j = i + 2; j < count - (i === 0 ? 1 : 0); j++) {
      const [a, b, p, q] = [outline[i]!, outline[i + 1]!, outline[j]!, outline[(j + 1) % count]!]
      if (squaredDistanceOfSegments(a[0], a[1], b[0], b[1], p[0], p[1], q[0], q[1]) < SAME * SAME) {
        return inner('edgesCross', { one: i + 1, other: j + 1 })
      }
    }
  }
  return Math.abs(signedArea(outline)) < SAME * SAME ? inner('noArea', {}) : null
}

function foldsBack([px, py]: Point, [x, y]: Point, [qx, qy]: Point): boolean {
  const along = (x - px) * (qx - x) + (y - py) * (qy - y)
  const across = (x - px) * (qy - y) - (y - py) * (qx - x)
  return along < 0 && Math.abs(across) <= 1e-12 * Math.abs(along)
}

/** Whether two edges of an outline cross or touch, a corner is repeated, or it encloses no area (fewer than 3 corners too). */
export function selfCrossing(outline: readonly Point[]): boolean {
  return outlineFault(outline) !== null
}
