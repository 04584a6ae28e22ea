import type { Obstacle, Point } from '../documents/types.ts'
import { squaredDistanceToSegment } from './distances.ts'

/** A field's obstacles have at most so many corners together: the graph of tangents grows with their square. */
export const MOST_CORNERS = 300

/** An obstacle's outline, anticlockwise, without repeated corners, with its bounding box. */
export interface Polygon {
  readonly obstacle: Obstacle
  readonly corners: readonly Point[]
  readonly lowX: number
  readonly lowY: number
  readonly highX: number
  readonly highY: number
}

/** Area enclosed by an outline (m²), positive if it runs anticlockwise. */
export function signedArea(outline: readonly Point[]): number {
  let twice = 0
  for (let i = 0; i < outline.length; i++) {
    const [px, py] = outline[i]!
    const [qx, qy] = outline[(i + 1) % outline.length]!
    twice += px * qy - qx * py
  }
  return twice / 2
}

export function polygonOf(obstacle: Obstacle): Polygon {
  const outline = obstacle.outline.filter(([x, y], i, all) => {
    const before = all[(i + all.length - 1) % all.length]!
    return all.length === 1 || x !== before[0] || y !== before[1]
  })
  const corners = signedArea(outline) < 0 ? outline.reverse() : outline
  const xs = corners.map(([x]) => x)
  const ys = corners.map(([, y]) => y)
  return {
    obstacle,
    corners,
    lowX: Math.min(...xs),
    lowY: Math.min(...ys),
    highX: Math.max(...xs),
    highY: Math.max(...ys),
  }
}

/** Distance from a point to the polygon's outline (m), negative inside. */
export function signedDistance(polygon: Polygon, x: number, y: number): number {
  const { corners } = polygon
  let square = Number.POSITIVE_INFINITY
  let inside = false
  for (let i = 0, j = corners.length - 1; i < corners.length; j = i++) {
    const [px, py] = corners[j]!
    const [qx, qy] = corners[i]!
    square = Math.min(square, squaredDistanceToSegment(x, y, px, py, qx, qy))
    if (py > y !== qy > y && x < ((px - qx) * (y - qy)) / (py - qy) + qx) inside = !inside
  }
  return inside ? -Math.sqrt(square) : Math.sqrt(square)
}
