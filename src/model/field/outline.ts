import type { Point } from '../documents/types.ts'
import { squaredDistanceOfSegments } from './distances.ts'
import { MOST_CORNERS, signedArea } from './polygon.ts'

/** Corners and edges nearer than this (m) count as touching: far below what anyone measures on a field. */
const SAME = 1e-9

/** What is wrong with an outline, as a sentence, or null: it must be a simple polygon that encloses an area. */
export function outlineFault(outline: readonly Point[]): string | null {
  const count = outline.length
  if (count < 3) return `An outline needs at least 3 corners, and this one has ${count}.`
  if (count > MOST_CORNERS) return `An outline can have up to ${MOST_CORNERS} corners, and this one has ${count}.`
  for (let i = 0; i < count; i++) {
    for (let j = i + 1; j < count; j++) {
      if (Math.hypot(outline[i]![0] - outline[j]![0], outline[i]![1] - outline[j]![1]) < SAME) {
        return `Corners ${i + 1} and ${j + 1} are the same point.`
      }
    }
  }
  for (let i = 0; i < count; i++) {
    if (foldsBack(outline[i]!, outline[(i + 1) % count]!, outline[(i + 2) % count]!)) {
      return `At corner ${((i + 1) % count) + 1} the outline runs back along itself.`
    }
    // Neighbours share a corner; all other edges must stay apart.
    for (let j = i + 2; j < count - (i === 0 ? 1 : 0); j++) {
      const [a, b, p, q] = [outline[i]!, outline[i + 1]!, outline[j]!, outline[(j + 1) % count]!]
      if (squaredDistanceOfSegments(a[0], a[1], b[0], b[1], p[0], p[1], q[0], q[1]) < SAME * SAME) {
        return `The edges after corners ${i + 1} and ${j + 1} cross or touch.`
      }
    }
  }
  return Math.abs(signedArea(outline)) < SAME * SAME ? 'The outline encloses no area.' : null
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
