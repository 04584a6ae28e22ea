import type { Field, Game, Point } from '../../../../src/model/documents/types.ts'
import { partnerOf, rounded, roundedPoint } from './partner.ts'
import type { Thing } from './things.ts'

/** What a dragged point is drawn to. */
export interface SnapTargets {
  x: readonly number[]
  y: readonly number[]
  /** Edges of obstacles, from which the point may keep exactly `away`. */
  edges: readonly (readonly [Point, Point])[]
  away: number
}

export interface Snapped {
  at: Point
  /** Lines to draw: what the point is level with. */
  guides: { x?: number; y?: number }
}

function nearest(value: number, targets: readonly number[], within: number): number | null {
  let best: number | null = null
  for (const target of targets) {
    const distance = Math.abs(target - value)
    if (distance <= within && (best === null || distance < Math.abs(best - value))) best = target
  }
  return best
}

function nearestOn([px, py]: Point, [[ax, ay], [bx, by]]: readonly [Point, Point]): Point {
  const [dx, dy] = [bx - ax, by - ay]
  const square = dx * dx + dy * dy
  const along = square === 0 ? 0 : Math.min(1, Math.max(0, ((px - ax) * dx + (py - ay) * dy) / square))
  return [ax + along * dx, ay + along * dy]
}

/** To the nearest edge that is about as far away as it should be; a tenth of a millimetre more, so that rounding frees. */
function toEdge(point: Point, { edges, away }: SnapTargets, within: number): Point | null {
  let best: { at: Point; off: number } | null = null
  for (const edge of edges) {
    const [x, y] = nearestOn(point, edge)
    const distance = Math.hypot(point[0] - x, point[1] - y)
    const off = Math.abs(distance - away)
    if (off > within || (best && best.off <= off)) continue
    const reach = distance === 0 ? 0 : (away === 0 ? 0 : away + 0.0001) / distance
    best = { at: roundedPoint([x + (point[0] - x) * reach, y + (point[1] - y) * reach]), off }
  }
  return best?.at ?? null
}

const toGrid = (value: number, grid: number): number => rounded(grid > 0 ? Math.round(value / grid) * grid : value)

/**
 * Where a dragged point comes to lie: level with something near (each axis by itself), else at an edge, else on the
 * grid. Distances in metres; a grid of 0 is none; without `targets` there is the grid alone.
 */
export function snapped(point: Point, how: { grid: number; targets: SnapTargets | null; within: number }): Snapped {
  const { grid, targets, within } = how
  const x = targets ? nearest(point[0], targets.x, within) : null
  const y = targets ? nearest(point[1], targets.y, within) : null
  if (targets && x === null && y === null) {
    const edge = toEdge(point, targets, within)
    if (edge) return { at: edge, guides: {} }
  }
  return {
    at: [x ?? toGrid(point[0], grid), y ?? toGrid(point[1], grid)],
    guides: { ...(x === null ? {} : { x }), ...(y === null ? {} : { y }) },
  }
}

const edgesOf = (outline: readonly Point[]) =>
  outline.map((corner, index) => [corner, outline[(index + 1) % outline.length]!] as const)

function wallsOf(field: Field, away: number): SnapTargets['x'][] {
  const across = (size: number) => [away, size / 2, size - away].map(rounded)
  return [across(field.length), across(field.width)]
}

/** Corners of obstacles that stay where they are while a thing moves: a corner's neighbours do, what moves along does not. */
function corners(field: Field, thing: Thing | null): { points: Point[]; edges: (readonly [Point, Point])[] } {
  const partner = thing && 'index' in thing && isObstacle(thing) ? partnerOf(field, thing.index)?.index : undefined
  const points: Point[] = []
  const edges: (readonly [Point, Point])[] = []
  for (const [index, { outline }] of field.obstacles.entries()) {
    const own = thing !== null && isObstacle(thing) && index === thing.index
    if (own && thing.kind === 'corner') points.push(...outline.filter((_, corner) => corner !== thing.corner))
    if (own || index === partner) continue
    points.push(...outline)
    edges.push(...edgesOf(outline))
  }
  return { points, edges }
}

const isObstacle = (thing: Thing): thing is Extract<Thing, { kind: 'obstacle' | 'corner' }> =>
  thing.kind === 'obstacle' || thing.kind === 'corner'

/**
 * What a thing can be drawn to: walls and middle lines, other points, and obstacles. A start or spot keeps `away` from
 * walls and obstacles, as near as the robot's centre gets; an obstacle's corner lies on them.
 */
export function targetsOf(game: Game, thing: Thing | null, kept: number): SnapTargets {
  const away = thing && isObstacle(thing) ? 0 : kept
  const places = [...game.sources, ...game.goals, ...game.finishes]
  const spots = [...game.starts, ...places.flatMap((place) => place.spots)].filter(
    ({ id }) => !thing || isObstacle(thing) || id !== thing.id,
  )
  const still = corners(game.field, thing)
  const points: Point[] = [...spots.map(({ at }) => at), ...still.points]
  const sides = (values: number[]) =>
    away === 0 ? [] : values.flatMap((value) => [rounded(value - away), rounded(value + away)])
  const [wallsX, wallsY] = wallsOf(game.field, away)
  return {
    x: [...wallsX!, ...points.map(([x]) => x), ...sides(still.points.map(([x]) => x))],
    y: [...wallsY!, ...points.map(([, y]) => y), ...sides(still.points.map(([, y]) => y))],
    edges: still.edges,
    away,
  }
}
