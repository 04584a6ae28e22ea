import type { Point } from '../documents/types.ts'

export interface Route {
  /** Length of the shortest path of the robot's centre (m), exact. */
  length: number
  /** From rest to rest (s), exact, without pace. */
  seconds: number
  /** For drawing: arcs sampled to 1 cm. */
  path: Point[]
}
