import type { Load, Option } from '../documents/types.ts'

export type Action =
  | { kind: 'collect'; source: string; spot: string; load: number }
  | { kind: 'score'; goal: string; entry: number; spot: string }
  | { kind: 'finish'; finish: string; spot: string }
  | { kind: 'stop' }

export interface PlanNode {
  /** Id of a start or spot. */
  at: string
  load: Load | null
}

/** One best action for time left in from > t >= to (seconds). */
export interface Band {
  from: number
  to: number
  action: Action
}

export interface LeaveBy {
  node: PlanNode
  finish: string
  from: number
  to: number
  /** Least time left at which leaving for it is worth at most half a point less than at `from`. */
  latest: number
  /** Value of the best collect or score action at that time (points). */
  forgone: number
}

export interface Call {
  at: number
  points: number
  early3: number
  late3: number
}

export type WorthLeg =
  | { kind: 'collect'; source: string }
  | { kind: 'score'; goal: string; entry: number }
  | { kind: 'finish'; finish: string }

export interface Worth {
  leg: WorthLeg
  /** Id of the stage; `whole` for a trip that is given whole. */
  stage: string
  pointsPerSecond: number
}

export interface ExpectedPoints {
  total: number
  autonomous: number
  adjust: number
  goals: { [goal: string]: { pieces: number; points: number } }
  finishes: { [finish: string]: { attempts: number; points: number } }
}

/** The part of a plan that an edit shows at once. */
export interface QuickPlan {
  /** Expected points of the match: autonomous, adjustments, goals and finishes. */
  total: number
  policy: { node: PlanNode; bands: Band[] }[]
  leaveBy: LeaveBy[]
}

export interface PlanReport {
  expected: ExpectedPoints
  sd: number
  p10: number
  p50: number
  p90: number
  /** [points, probability], rising. */
  distribution: [number, number][]
  /** [pieces, probability] per goal, teleop only. */
  pieces: { [goal: string]: [number, number][] }
  policy: { node: PlanNode; bands: Band[] }[]
  leaveBy: LeaveBy[]
  first: { action: Action; value: number }[]
  call?: Call | null
  worth?: Worth[]
}

export interface PlanOptions {
  /** Grid of time (s): 0.1, or 0.25 for the many plans of a belief. */
  step?: 0.1 | 0.25
  with?: readonly ('call' | 'worth')[]
}

export type { Option }
