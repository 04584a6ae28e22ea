import type { Point } from '../documents/types.ts'

/** The line of all points whose product with the unit normal is the offset. */
export interface Line {
  normal: Point
  offset: number
}

/** Square of the distance from a point to the segment p–q. */
export function squaredDistanceToSegment(x: number, y: number, px: number, py: number, qx: number, qy: number): number {
  const dx = qx - px
  const dy = qy - py
  const square = dx * dx + dy * dy
  const along = square > 0 ? Math.min(1, Math.max(0, ((x - px) * dx + (y - py) * dy) / square)) : 0
  const ex = x - px - along * dx
  const ey = y - py - along * dy
  return ex * ex + ey * ey
}

/** Square of the distance between the segments a–b and p–q; 0 where they meet. */
export function squaredDistanceOfSegments(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  px: number,
  py: number,
  qx: number,
  qy: number,
): number {
  const dx = bx - ax
  const dy = by - ay
  const ex = qx - px
  const ey = qy - py
  const sideOfP = dx * (py - ay) - dy * (px - ax)
  const sideOfQ = dx * (qy - ay) - dy * (qx - ax)
  const sideOfA = ex * (ay - py) - ey * (ax - px)
  const sideOfB = ex * (by - py) - ey * (bx - px)
  if (sideOfP * sideOfQ < 0 && sideOfA * sideOfB < 0) return 0
  return Math.min(
    squaredDistanceToSegment(ax, ay, px, py, qx, qy),
    squaredDistanceToSegment(bx, by, px, py, qx, qy),
    squaredDistanceToSegment(px, py, ax, ay, bx, by),
    squaredDistanceToSegment(qx, qy, ax, ay, bx, by),
  )
}
