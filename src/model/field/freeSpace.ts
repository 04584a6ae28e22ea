import type { Field } from '../documents/types.ts'
import { type Line, squaredDistanceOfSegments } from './distances.ts'
import { type Polygon, polygonOf, signedDistance } from './polygon.ts'

/** Touching is allowed: what overlaps by no more than this (m) is free. */
export const TOUCHING = 1e-9

/** Where the robot's centre may be: at least `radius` from every obstacle, and inside the field shrunk by `radius`. */
export class FreeSpace {
  readonly radius: number
  readonly polygons: readonly Polygon[]
  private readonly length: number
  private readonly width: number
  private readonly least: number

  constructor(field: Field, radius: number) {
    this.radius = radius
    this.polygons = field.obstacles.map(polygonOf)
    this.length = field.length
    this.width = field.width
    this.least = radius - TOUCHING
  }

  /** Whether a point lies in the field shrunk by the radius. */
  isInField(x: number, y: number): boolean {
    const { least } = this
    return x >= least && y >= least && x <= this.length - least && y <= this.width - least
  }

  /** The first obstacle that is too near, or null. */
  obstacleAt(x: number, y: number): Polygon | null {
    const { radius, least } = this
    for (const polygon of this.polygons) {
      if (x < polygon.lowX - radius || x > polygon.highX + radius) continue
      if (y < polygon.lowY - radius || y > polygon.highY + radius) continue
      if (signedDistance(polygon, x, y) < least) return polygon
    }
    return null
  }

  /** The four borders of the shrunk field as lines. */
  borders(): Line[] {
    const { radius } = this
    return [
      { normal: [1, 0], offset: radius },
      { normal: [1, 0], offset: this.length - radius },
      { normal: [0, 1], offset: radius },
      { normal: [0, 1], offset: this.width - radius },
    ]
  }

  isFree(x: number, y: number): boolean {
    return this.isInField(x, y) && this.obstacleAt(x, y) === null
  }

  /** Whether the straight way a–b is free, given that it begins outside the obstacles themselves. */
  isLineFree(ax: number, ay: number, bx: number, by: number): boolean {
    // The shrunk field is convex, so the ends decide.
    if (!this.isInField(ax, ay) || !this.isInField(bx, by)) return false
    const { radius } = this
    const lowX = Math.min(ax, bx) - radius
    const highX = Math.max(ax, bx) + radius
    const lowY = Math.min(ay, by) - radius
    const highY = Math.max(ay, by) + radius
    for (const polygon of this.polygons) {
      if (polygon.highX <= lowX || polygon.lowX >= highX || polygon.highY <= lowY || polygon.lowY >= highY) continue
      if (this.least > 0 ? this.comesNear(polygon, ax, ay, bx, by) : entersInside(polygon, ax, ay, bx, by)) return false
    }
    return true
  }

  private comesNear(polygon: Polygon, ax: number, ay: number, bx: number, by: number): boolean {
    const { least } = this
    const dx = bx - ax
    const dy = by - ay
    const reach = least * Math.sqrt(dx * dx + dy * dy)
    const { corners } = polygon
    let [px, py] = corners[corners.length - 1]!
    let sideOfP = dx * (py - ay) - dy * (px - ax)
    for (let i = 0; i < corners.length; i++) {
      const [qx, qy] = corners[i]!
      const sideOfQ = dx * (qy - ay) - dy * (qx - ax)
      // An edge wholly beyond the strip around the line, on one side, can not be near: most edges end here.
      const beyond = (sideOfP >= reach && sideOfQ >= reach) || (sideOfP <= -reach && sideOfQ <= -reach)
      if ((!beyond || reach === 0) && squaredDistanceOfSegments(ax, ay, bx, by, px, py, qx, qy) < least * least) {
        return true
      }
      px = qx
      py = qy
      sideOfP = sideOfQ
    }
    return false
  }
}

/** For a point robot, whose way may follow an edge or meet a corner: does it pass through the inside? */
function entersInside(polygon: Polygon, ax: number, ay: number, bx: number, by: number): boolean {
  const dx = bx - ax
  const dy = by - ay
  const square = dx * dx + dy * dy
  if (square === 0) return signedDistance(polygon, ax, ay) < -TOUCHING
  const { corners } = polygon
  const meets = [0, 1]
  for (let i = 0, j = corners.length - 1; i < corners.length; j = i++) {
    const [px, py] = corners[j]!
    const [qx, qy] = corners[i]!
    const cross = dx * (qy - py) - dy * (qx - px)
    if (cross !== 0) meets.push(((px - ax) * (qy - py) - (py - ay) * (qx - px)) / cross)
    meets.push(((qx - ax) * dx + (qy - ay) * dy) / square)
  }
  const within = meets.filter((at) => at >= 0 && at <= 1).sort((a, b) => a - b)
  return within.some((at, i) => {
    const middle = (at + (within[i + 1] ?? at)) / 2
    return signedDistance(polygon, ax + middle * dx, ay + middle * dy) < -TOUCHING
  })
}
