import type { Point } from '../documents/types.ts'
import type { Corner } from './corners.ts'
import type { FreeSpace } from './freeSpace.ts'

/**
 * Where a straight line leaves an arc as its tangent. Seen from the arc, the line continues a turn in `sense`
 * (1 anticlockwise, -1 clockwise); whoever arrives by the line turns the other way.
 */
export interface Touch {
  readonly corner: number
  /** Which free part of the corner's arc. */
  readonly part: number
  /** Angle from the corner's start (rad). */
  readonly angle: number
  readonly sense: 1 | -1
  readonly at: Point
}

/** A line that is tangent to two arcs. */
export interface Link {
  readonly ends: readonly [Touch, Touch]
  readonly length: number
}

/** A line from a point to an arc. */
export interface Approach {
  readonly touch: Touch
  readonly length: number
}

const FULL = 2 * Math.PI
/**
 * Nearly touching arcs lose half of the digits of a tangent's angle; this much beside an arc's end (rad) cuts into the
 * corner by less than 1e-13 of the radius, and whether the line itself is free is checked to the full tolerance.
 */
export const ANGLE = 1e-7

/** All free lines that are tangent to two corners' arcs, the offset edges among them. */
export function links(space: FreeSpace, corners: readonly Corner[]): Link[] {
  const found: Link[] = []
  for (let i = 0; i < corners.length; i++) {
    for (let j = i + 1; j < corners.length; j++) addLinks(space, corners, i, j, found)
  }
  return found
}

function addLinks(space: FreeSpace, corners: readonly Corner[], i: number, j: number, found: Link[]) {
  const { radius } = space
  const a = corners[i]!
  const b = corners[j]!
  const distance = Math.hypot(b.x - a.x, b.y - a.y)
  if (distance === 0) return
  const direction = Math.atan2(b.y - a.y, b.x - a.x)
  for (const sense of [1, -1] as const) {
    // From a, a clockwise turn (sense -1) ends on the left of the line of centres, an anticlockwise one on the right.
    const outer = direction - (sense * Math.PI) / 2
    addLink(
      space,
      touchOf(corners, radius, i, outer, sense),
      touchOf(corners, radius, j, outer, -sense as 1 | -1),
      found,
    )
    if (distance < 2 * radius) continue
    const inner = direction - sense * Math.acos((2 * radius) / distance)
    addLink(
      space,
      touchOf(corners, radius, i, inner, sense),
      touchOf(corners, radius, j, inner + Math.PI, sense),
      found,
    )
  }
}

function addLink(space: FreeSpace, a: Touch | null, b: Touch | null, found: Link[]) {
  if (!a || !b || !space.isLineFree(a.at[0], a.at[1], b.at[0], b.at[1])) return
  found.push({ ends: [a, b], length: Math.hypot(b.at[0] - a.at[0], b.at[1] - a.at[1]) })
}

/** All free lines from a point that are tangent to a corner's arc. */
export function approaches(space: FreeSpace, corners: readonly Corner[], [x, y]: Point): Approach[] {
  const { radius } = space
  return corners.flatMap((corner, index) => {
    const distance = Math.hypot(x - corner.x, y - corner.y)
    if (distance === 0) return []
    const direction = Math.atan2(y - corner.y, x - corner.x)
    // A point may stand on the arc itself, or within the tolerance of touching inside it.
    const half = Math.acos(Math.min(1, radius / distance))
    return ([1, -1] as const).flatMap((sense) => {
      const touch = touchOf(corners, radius, index, direction - sense * half, sense)
      if (!touch || !space.isLineFree(x, y, touch.at[0], touch.at[1])) return []
      return [{ touch, length: Math.hypot(touch.at[0] - x, touch.at[1] - y) }]
    })
  })
}

/** The touch at an angle (from the x axis), or null where the arc can not be driven there. */
function touchOf(
  corners: readonly Corner[],
  radius: number,
  index: number,
  direction: number,
  sense: 1 | -1,
): Touch | null {
  const { x, y, start, free } = corners[index]!
  let angle = (((direction - start) % FULL) + FULL) % FULL
  if (angle > FULL - ANGLE) angle -= FULL
  const part = free.findIndex(([low, high]) => angle >= low - ANGLE && angle <= high + ANGLE)
  if (part < 0) return null
  return {
    corner: index,
    part,
    angle,
    sense,
    at: [x + radius * Math.cos(direction), y + radius * Math.sin(direction)],
  }
}
