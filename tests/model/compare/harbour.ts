import type { Game, Option, Robot } from '../../../src/model/documents/types.ts'

/**
 * A game small enough for pencil and paper: a trip is 3 s of collecting and 2 s of scoring for 4 points, 30 s of teleop,
 * so 6 trips and 24 points without a finish. The mooring takes 8 s and pays 20: leaving for it at 10 s left, a robot makes
 * 4 trips (20 s) and earns 16 + 20 · success. All times lie on both grids, so that every value is exact.
 */
export const game: Game = {
  format: 1,
  id: 'harbour',
  name: 'Harbour',
  pieces: [{ id: 'crate', name: 'Crate' }],
  clock: { auto: 0, pause: 0, teleop: 30, endgame: 10 },
  field: { length: 16, width: 8, clearance: 0.05, symmetry: 'rotate', obstacles: [] },
  starts: [{ id: 'start', name: 'Start', at: [2, 2] }],
  sources: [
    {
      id: 'quay',
      name: 'Quay',
      piece: 'crate',
      spots: [{ id: 'quay.1', at: [4, 2] }],
      slots: 1,
      stock: null,
      restock: null,
      shared: false,
    },
  ],
  goals: [
    {
      id: 'shed',
      name: 'Shed',
      accepts: ['crate'],
      spots: [{ id: 'shed.1', at: [6, 4] }],
      slots: 1,
      capacity: null,
      award: { kind: 'each', auto: 4, teleop: 4 },
    },
  ],
  finishes: [{ id: 'mooring', name: 'Mooring', spots: [{ id: 'mooring.1', at: [8, 4] }], slots: 1, points: 20 }],
  leave: null,
  sets: [],
  bonuses: [],
  // biome-ignore lint/suspicious/noThenProperty: the model's own name for the order of tie-breakers
  ranking: { win: 2, tie: 1, loss: 0, per: 'match', then: ['score'] },
  fouls: { minor: 2, major: 5 },
}

const robot: Robot = {
  format: 1,
  id: 'tug',
  name: 'Tug',
  footprint: { length: 0.8, width: 0.8 },
  drive: { topSpeed: 4, acceleration: 3, deceleration: 3, pace: { kind: 'fixed', seconds: 1 } },
  form: { spread: 1 },
  carries: { crate: 1 },
  preload: null,
  collect: { quay: { whole: { kind: 'fixed', seconds: 3 }, success: 1, retry: null } },
  score: { shed: [{ whole: { kind: 'fixed', seconds: 2 }, spots: 'any', success: 1 }] },
  finish: { mooring: { whole: { kind: 'fixed', seconds: 8 }, success: 0.5, otherwise: null } },
  autos: [],
  reliability: { absent: 0, stops: 0 },
  fouls: { minorPerMatch: 0, majorPerMatch: 0 },
  defence: { slowdown: 0, minorPerMinute: 0, majorPerMinute: 0 },
}

const option = (id: string, finish: Option['finish']): Option => ({
  format: 1,
  id,
  name: id,
  robot,
  start: 'start',
  auto: null,
  role: { sources: ['quay'], goals: ['shed'], finishes: ['mooring'], defend: null },
  finish,
  holdSeconds: {},
  adjust: [],
})

export const leaving = option('leaving', { mode: 'skip' })
export const mooring = option('mooring', { mode: 'always', at: 10 })
export const options = [leaving, mooring]
