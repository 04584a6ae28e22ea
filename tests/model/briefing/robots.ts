import type { HabitDraw } from '../../../src/model/documents/habit.ts'
import type { Game, Option, Robot } from '../../../src/model/documents/types.ts'

const spot = (id: string, x: number, y: number) => ({ id, at: [x, y] as [number, number] })

/** A field without obstacles: one source, two goals, a dock. */
export const observedGame: Game = {
  format: 1,
  id: 'plain',
  name: 'Plain',
  pieces: [{ id: 'ball', name: 'Ball' }],
  clock: { auto: 15, pause: 2, teleop: 120, endgame: 30 },
  field: { length: 16, width: 8, clearance: 0.05, symmetry: 'rotate', obstacles: [] },
  starts: [spot('left', 1, 2), spot('middle', 1, 4), spot('right', 1, 6)].map((each) => ({ ...each, name: each.id })),
  sources: [
    {
      ...{ id: 'in', name: 'In', piece: 'ball', slots: 3, stock: null, restock: null, shared: false },
      spots: [spot('in.1', 12, 4)],
    },
  ],
  goals: [
    {
      ...{ id: 'near', name: 'Near', accepts: ['ball'], slots: 3, capacity: null },
      spots: [spot('near.1', 3, 2)],
      award: { kind: 'each', auto: 4, teleop: 3 },
    },
    {
      ...{ id: 'far', name: 'Far', accepts: ['ball'], slots: 3, capacity: 8 },
      spots: [spot('far.1', 5, 6)],
      award: { kind: 'each', auto: 8, teleop: 6 },
    },
  ],
  finishes: [{ id: 'dock', name: 'Dock', spots: [spot('dock.1', 2, 4)], slots: 3, points: 8 }],
  leave: null,
  sets: [],
  bonuses: [],
  // biome-ignore lint/suspicious/noThenProperty: the model's own name for the order of tie-breakers
  ranking: { win: 2, tie: 1, loss: 0, per: 'match', then: [] },
  fouls: { minor: 2, major: 5 },
}

const whole = (median: number) => ({ whole: { kind: 'lognormal' as const, median, spread: 1.3 } })

/** A robot as it was seen: half of its trips to either goal, with four draws of what is believed. */
export function observed(id: string, of: { finish?: Robot['finish']; draws?: HabitDraw[] } = {}): Option {
  const finish = of.finish ?? { dock: { whole: { kind: 'fixed', seconds: 4 }, success: 0.9, otherwise: null } }
  const robot: Robot = {
    format: 1,
    id,
    name: id,
    footprint: { length: 0.8, width: 0.8 },
    drive: { topSpeed: 3, acceleration: 3, deceleration: 3, pace: { kind: 'fixed', seconds: 1 } },
    form: { spread: 1.1 },
    carries: { ball: 1 },
    preload: null,
    collect: { in: { ...whole(6), success: 1, retry: null } },
    score: { near: [{ ...whole(5), spots: 'any', success: 0.9 }], far: [{ ...whole(5), spots: 'any', success: 0.8 }] },
    finish,
    autos: [],
    reliability: { absent: 0.02, stops: 0.02 },
    fouls: { minorPerMatch: 0.2, majorPerMatch: 0 },
    defence: { slowdown: 0, minorPerMinute: 0, majorPerMinute: 0 },
    habit: {
      ...{ goals: { near: 0.5, far: 0.5 }, pieces: { '1': 1 }, departs: 15 },
      draws: of.draws ?? [0.9, 1, 1, 1.1].map((time) => ({ time })),
    },
  }
  return {
    ...{ format: 1, id, name: id, robot, start: 'middle', auto: null, holdSeconds: {}, adjust: [] },
    role: { sources: ['in'], goals: ['near', 'far'], finishes: Object.keys(finish), defend: null },
    finish: { mode: 'best' },
  }
}
