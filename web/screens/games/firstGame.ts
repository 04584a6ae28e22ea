import type { Game } from '../../../src/model/documents/types.ts'
import { words } from '../../words/catalogue.ts'

/** The least that a game can be: a clock, an empty field, one kind of piece and one start. Numbers to be replaced. */
export function firstGame(id: string, name: string, piece: string): Game {
  return {
    format: 1,
    id,
    name,
    pieces: [{ id: 'piece-1', name: piece }],
    clock: { auto: 15, pause: 0, teleop: 120, endgame: 20 },
    field: { length: 16, width: 8, clearance: 0.05, symmetry: 'rotate', obstacles: [] },
    starts: [{ id: 'start-1', name: words().games.fresh.start, at: [1, 4] }],
    sources: [],
    goals: [],
    finishes: [],
    leave: null,
    sets: [],
    bonuses: [],
    // biome-ignore lint/suspicious/noThenProperty: the model's own name for the order of tie-breakers
    ranking: { win: 2, tie: 1, loss: 0, per: 'match', then: ['score'] },
    fouls: { minor: 0, major: 0 },
  }
}
