import type { Game, Robot } from '../../../src/model/documents/types.ts'

const guess = { kind: 'range', low: 5, likely: 8, high: 14 } as const

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
    collect: Object.fromEntries(
      game.sources.map((source) => [
        source.id,
        { whole: guess, success: 0.9, retry: { kind: 'range', low: 0.8, likely: 1.5, high: 3 } },
      ]),
    ),
    score: Object.fromEntries(game.goals.map((goal) => [goal.id, [{ whole: guess, spots: 'any', success: 0.85 }]])),
    finish: Object.fromEntries(
      game.finishes.map((finish) => [finish.id, { whole: guess, success: 0.8, otherwise: null }]),
    ),
    autos: [],
    reliability: { absent: 0.03, stops: 0.03 },
    fouls: { minorPerMatch: 0.3, majorPerMatch: 0.05 },
    defence: { slowdown: 1.2, minorPerMinute: 0.5, majorPerMinute: 0.1 },
  }
}
