import type { QuickWay } from '../documents/quickSheet.ts'
import type { Game } from '../documents/types.ts'
import type { Planner } from '../plan/index.ts'
import { optionOf } from './grow.ts'

/** What a match brings that is played this way: expected points of teleop and those by hand, their parts, and about how many trips. */
export interface WayResult {
  points: number
  goals: { [goal: string]: { pieces: number; points: number } }
  finish: number
  /** Full loads that the pieces scored stand for: pieces / (success × load). */
  trips: number
}

/**
 * Expected points of one way, exact for its numbers: form 1, no autonomous, one piece in hand at the start.
 * @param planner a planner of that game
 * @throws ModelError as the planner does
 */
export function wayResult(planner: Planner, game: Game, way: QuickWay): WayResult {
  const { expected } = planner.report(optionOf(game, way))
  const pieces = Object.values(expected.goals).reduce((sum, goal) => sum + goal.pieces, 0)
  const perTrip = way.score.success * way.load
  return {
    points: expected.total,
    goals: expected.goals,
    finish: Object.values(expected.finishes).reduce((sum, finish) => sum + finish.points, 0),
    trips: perTrip > 0 ? pieces / perTrip : 0,
  }
}
