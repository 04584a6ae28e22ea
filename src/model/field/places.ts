import type { Game, Point } from '../documents/types.ts'
import type { Path } from '../errors.ts'
import type { Called } from './sentences.ts'

/** A start, or a spot of a source, goal or finish. */
export interface Place {
  id: string
  at: Point
  called: Called
  /** Where the game says it. */
  path: Path
}

/** Looks up a start or spot by its id. */
export function placeOf(game: Game, id: string): Place | null {
  for (const [i, start] of game.starts.entries()) {
    if (start.id === id) return { id, at: start.at, called: { name: start.name }, path: ['starts', i, 'at'] }
  }
  for (const kind of ['sources', 'goals', 'finishes'] as const) {
    for (const [i, { name, spots }] of game[kind].entries()) {
      const j = spots.findIndex((spot) => spot.id === id)
      if (j < 0) continue
      const called = spots.length > 1 ? { name, spot: id } : { name }
      return { id, at: spots[j]!.at, called, path: [kind, i, 'spots', j, 'at'] }
    }
  }
  return null
}
