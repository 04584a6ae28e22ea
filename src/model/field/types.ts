import type { Point } from '../documents/types.ts'
import type { Blocker } from './sentences.ts'

export interface Route {
  /** Length of the shortest path of the robot's centre (m), exact. */
  length: number
  /** From rest to rest (s), exact, without pace. */
  seconds: number
  /** For drawing: arcs sampled to 1 cm. */
  path: Point[]
}

/** A straight piece of a route (m). */
export interface LineSegment {
  kind: 'line'
  length: number
  from: Point
  to: Point
}

/** A piece of a route round one grown corner, the whole turn in one piece. */
export interface ArcSegment {
  kind: 'arc'
  length: number
  radius: number
  /** By how much the robot's direction changes (rad, positive). */
  turn: number
  centre: Point
  /** Where on the circle it begins (rad, from the x axis). */
  startAngle: number
  /** 1: anticlockwise, -1: clockwise. */
  direction: 1 | -1
}

export type Segment = LineSegment | ArcSegment

/** The shortest ways of one robot's centre over one field. */
export interface FieldRoutes {
  /** By how much obstacles grow and the field shrinks (m). */
  readonly radius: number
  /** What keeps the robot's centre from standing there, as words for a sentence, or null. Touching is allowed. */
  blockedBy(point: Point): Blocker | null
  /** The shortest route, or null where there is none. */
  route(from: Point, to: Point): { length: number; segments: Segment[] } | null
}
