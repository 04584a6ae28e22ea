import { refusal } from '../documents/sentences.ts'
import type { Field, Point } from '../documents/types.ts'
import { FreeSpace } from './freeSpace.ts'
import { TangentGraph, type Tree, turnBetween } from './graph.ts'
import { MOST_CORNERS } from './polygon.ts'
import type { Touch } from './tangents.ts'
import type { FieldRoutes, Segment } from './types.ts'

/** A turn below this (rad) is rounding: the way goes straight on. */
const NO_TURN = 1e-7
const MOST_FIELDS = 8
const MOST_TREES = 512
/** So many lengths in all the trees of a field: about 10 MB. */
const MOST_LENGTHS = 800_000

const known = new Map<string, FieldRoutes>()

/**
 * The shortest ways of a robot's centre over a field: among obstacles grown by half the footprint's smaller side plus
 * the field's clearance, inside the field shrunk by as much. Exact: straight lines and arcs round convex corners, found
 * in the graph of their tangents.
 *
 * Touching is allowed (1e-9 m), so a gap of exactly twice the radius can be driven through. For a point robot (radius 0)
 * that includes the seam between two obstacles, or an obstacle and the border, that only touch.
 *
 * The graph is made once per field and radius, and the shortest ways from a point once per point; both are kept.
 *
 * Errors: ModelError 'overBudget' for more than 300 corners.
 * Source: tangent visibility graph of grown obstacles, LaValle, Planning Algorithms (2006), section 6.2.4.
 */
export function fieldRoutes(field: Field, footprint: { length: number; width: number }): FieldRoutes {
  const radius = Math.min(footprint.length, footprint.width) / 2 + field.clearance
  const key = JSON.stringify([radius, field.length, field.width, field.obstacles])
  return remembered(known, key, MOST_FIELDS, () => makeRoutes(field, radius))
}

function makeRoutes(field: Field, radius: number): FieldRoutes {
  const count = field.obstacles.reduce((sum, { outline }) => sum + outline.length, 0)
  if (count > MOST_CORNERS) {
    throw refusal('overBudget', ['fieldTooFine', { count, most: MOST_CORNERS }])
  }
  const space = new FreeSpace(field, radius)
  const graph = new TangentGraph(space)
  const trees = new Map<string, Tree>()
  const mostTrees = Math.min(MOST_TREES, Math.ceil(MOST_LENGTHS / (graph.arrivals.length + 1)))
  const treeFrom = (point: Point) =>
    remembered(trees, `${point[0]} ${point[1]}`, mostTrees, () => graph.treeFrom(point))

  return {
    radius,
    blockedBy([x, y]) {
      if (!space.isInField(x, y)) return { border: true }
      const polygon = space.obstacleAt(x, y)
      return polygon && { obstacle: polygon.obstacle.name || polygon.obstacle.id }
    },
    route(from, to) {
      if (!space.isFree(from[0], from[1]) || !space.isFree(to[0], to[1])) return null
      if (space.isLineFree(from[0], from[1], to[0], to[1])) return measured(straight([from, to]))
      const tree = treeFrom(from)
      const ending = graph.ending(tree, treeFrom(to).approaches)
      if (!ending) return null
      return measured(pieces(graph, tree, from, to, ending.last, ending.approach.touch))
    },
  }
}

/** Follows a shortest way back from its end, and gives its pieces from its beginning. */
function pieces(graph: TangentGraph, tree: Tree, from: Point, to: Point, last: number, leaving: Touch): Segment[] {
  const backwards: Segment[] = []
  let straightTo: Point = to
  let leave = leaving
  for (let arrival = last; ; arrival = tree.before[arrival]!) {
    const arrive = arrival < 0 ? tree.approaches[-1 - arrival]!.touch : graph.arrivals[arrival]!.touch
    const arc = arcOf(graph, arrive, leave)
    if (arc) {
      backwards.push(...straight([leave.at, straightTo]), arc)
      straightTo = arrive.at
    }
    if (arrival < 0) break
    leave = graph.arrivals[arrival]!.leaving
  }
  backwards.push(...straight([from, straightTo]))
  return backwards.reverse()
}

function straight([from, to]: [Point, Point]): Segment[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  return length > 0 ? [{ kind: 'line', length, from, to }] : []
}

function arcOf(graph: TangentGraph, arrive: Touch, leave: Touch): Segment | null {
  const turn = turnBetween(arrive, leave)!
  if (turn < NO_TURN) return null
  const { x, y, start } = graph.corners[arrive.corner]!
  const { radius } = graph.space
  return {
    kind: 'arc',
    length: turn * radius,
    radius,
    turn,
    centre: [x, y],
    startAngle: start + arrive.angle,
    direction: leave.sense,
  }
}

function measured(segments: Segment[]): { length: number; segments: Segment[] } {
  return { length: segments.reduce((sum, segment) => sum + segment.length, 0), segments }
}

/** Looks a value up, making it where it is missing; the oldest goes when there are too many. */
function remembered<Value>(values: Map<string, Value>, key: string, most: number, make: () => Value): Value {
  const before = values.get(key)
  if (before !== undefined) return before
  const value = make()
  if (values.size >= most) values.delete(values.keys().next().value!)
  values.set(key, value)
  return value
}
