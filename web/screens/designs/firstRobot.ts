import type { Game, Robot } from '../../../src/model/documents/types.ts'
import { firstCollect, firstFinish, firstScore } from './firstTrips.ts'

/** A robot that can do everything in the game, from one guess per leg: what a first Saturday knows. */
export function firstRobot(game: Game, id: string, name: string): Robot {
  const piece = game.pieces[0]?.id
  return {
    format: 1,
    id,
    name,
    footprint: { length: 0.85, width: 0.85 },
    drive: {
      topSpeed: 3.5,
      acceleration: 3,
      deceleration: 4,
      pace: { kind: 'range', low: 1, likely: 1.15, high: 1.6 },
    },
    form: { spread: 1.15 },
    carries: Object.fromEntries(game.pieces.map((entry) => [entry.id, 1])),
    preload: piece === undefined ? null : { piece, count: 1 },
    collect: Object.fromEntries(game.sources.map((source) => [source.id, firstCollect])),
    score: Object.fromEntries(game.goals.map((goal) => [goal.id, [firstScore]])),
    finish: Object.fromEntries(game.finishes.map((finish) => [finish.id, firstFinish])),
    autos: [],
    reliability: { absent: 0.03, stops: 0.03 },
    fouls: { minorPerMatch: 0.3, majorPerMatch: 0.05 },
    defence: { slowdown: 0.25, minorPerMinute: 0.5, majorPerMinute: 0.1 },
  }
}
