import type { Point } from '../documents/types.ts'
import type { Line } from './distances.ts'
import type { FreeSpace } from './freeSpace.ts'
import type { Polygon } from './polygon.ts'

/** The arc round one convex corner: angles count anticlockwise from `start`, and only the `free` parts can be driven. */
export interface Corner {
  readonly x: number
  readonly y: number
  readonly start: number
  readonly free: readonly (readonly [number, number])[]
}

/** Below this turn (rad) three corners count as being in line. */
const STRAIGHT = 1e-9
const FULL = 2 * Math.PI

/** All convex corners with what other obstacles and the field's border leave of their arcs. Concave ones have no arc. */
export function freeCorners(space: FreeSpace): Corner[] {
  return space.polygons.flatMap((polygon) => convexCorners(polygon).flatMap((corner) => freeParts(space, corner)))
}

interface WholeCorner {
  x: number
  y: number
  start: number
  turn: number
}

function convexCorners({ corners }: Polygon): WholeCorner[] {
  return corners.flatMap(([x, y], i) => {
    const [px, py] = corners[(i + corners.length - 1) % corners.length]!
    const [qx, qy] = corners[(i + 1) % corners.length]!
    const along = (x - px) * (qx - x) + (y - py) * (qy - y)
    const across = (x - px) * (qy - y) - (y - py) * (qx - x)
    const turn = Math.atan2(across, along)
    // The outward normal of the edge that arrives is where the arc begins.
    return turn > STRAIGHT ? [{ x, y, start: Math.atan2(y - py, x - px) - Math.PI / 2, turn }] : []
  })
}

function freeParts(space: FreeSpace, corner: WholeCorner): Corner[] {
  const { x, y, start, turn } = corner
  const { radius } = space
  const cuts = [0, ...crossings(space, corner), turn].sort((a, b) => a - b)
  const free: [number, number][] = []
  for (let i = 0; i + 1 < cuts.length; i++) {
    const low = cuts[i]!
    const high = cuts[i + 1]!
    const middle = start + (low + high) / 2
    if (high <= low || !space.isFree(x + radius * Math.cos(middle), y + radius * Math.sin(middle))) continue
    const last = free.at(-1)
    if (last && last[1] === low) last[1] = high
    else free.push([low, high])
  }
  return free.length > 0 ? [{ x, y, start, free }] : []
}

/** Angles within the arc at which it can pass from free to blocked: there it crosses the outline of another grown shape. */
function crossings(space: FreeSpace, corner: WholeCorner): number[] {
  const found: number[] = []
  const add = (angle: number) => {
    const from = (((angle - corner.start) % FULL) + FULL) % FULL
    if (from > 0 && from < corner.turn) found.push(from)
  }
  for (const line of space.borders()) addLine(corner, space.radius, line, add)
  for (const { corners } of space.polygons) {
    for (let i = 0, j = corners.length - 1; i < corners.length; j = i++) {
      const p = corners[j]!
      const q = corners[i]!
      addCircle(corner, space.radius, q, add)
      const length = Math.hypot(q[0] - p[0], q[1] - p[1])
      const normal: Point = [(q[1] - p[1]) / length, (p[0] - q[0]) / length]
      const offset = normal[0] * p[0] + normal[1] * p[1] + space.radius
      addLine(corner, space.radius, { normal, offset }, add)
    }
  }
  return found
}

function addLine({ x, y }: WholeCorner, radius: number, { normal, offset }: Line, add: (angle: number) => void) {
  const cosine = (offset - normal[0] * x - normal[1] * y) / radius
  if (!(Math.abs(cosine) <= 1)) return
  const direction = Math.atan2(normal[1], normal[0])
  add(direction + Math.acos(cosine))
  add(direction - Math.acos(cosine))
}

function addCircle({ x, y }: WholeCorner, radius: number, [cx, cy]: Point, add: (angle: number) => void) {
  const distance = Math.hypot(cx - x, cy - y)
  if (distance === 0 || distance > 2 * radius) return
  const direction = Math.atan2(cy - y, cx - x)
  add(direction + Math.acos(distance / (2 * radius)))
  add(direction - Math.acos(distance / (2 * radius)))
}
