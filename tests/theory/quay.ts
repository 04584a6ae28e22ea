import type { Duration, Game, Option } from '../../src/model/documents/types.ts'

/** A quay from which boxes are brought to one crane: everybody drives nowhere, so that legs take their stages' times. */
export function quay(teleop: number, slots: number): Game {
  const place = { at: [5, 5] as [number, number] }
  return {
    format: 1,
    id: 'quay',
    name: 'Quay',
    pieces: [{ id: 'box', name: 'Box' }],
    clock: { auto: 0, pause: 0, teleop, endgame: 0 },
    field: { length: 10, width: 10, clearance: 0, symmetry: 'mirror', obstacles: [] },
    starts: [{ id: 'start', name: 'Start', ...place }],
    sources: [
      {
        id: 'stack',
        name: 'Stack',
        piece: 'box',
        spots: [{ id: 'stack.1', ...place }],
        slots: 3,
        stock: null,
        restock: null,
        shared: false,
      },
    ],
    goals: [
      {
        id: 'crane',
        name: 'Crane',
        accepts: ['box'],
        spots: [{ id: 'crane.1', ...place }],
        slots,
        capacity: null,
        award: { kind: 'each', auto: 1, teleop: 1 },
      },
    ],
    finishes: [],
    leave: null,
    sets: [],
    bonuses: [],
    // biome-ignore lint/suspicious/noThenProperty: the model's own name for the order of tie-breakers
    ranking: { win: 2, tie: 1, loss: 0, per: 'match', then: [] },
    fouls: { minor: 0, major: 0 },
  }
}

export function carrier(thinking: Duration, service: Duration): Option {
  const stage = (id: string, duration: Duration) => ({ stages: [{ id, name: id, duration, after: ['drive'] }] })
  return {
    format: 1,
    id: 'carrier',
    name: 'Carrier',
    robot: {
      format: 1,
      id: 'carrier',
      name: 'Carrier',
      footprint: { length: 0.5, width: 0.5 },
      drive: { topSpeed: 1, acceleration: 1, deceleration: 1, pace: { kind: 'fixed', seconds: 1 } },
      form: { spread: 1 },
      carries: { box: 1 },
      preload: null,
      collect: { stack: { ...stage('take', thinking), success: 1, retry: null } },
      score: { crane: [{ ...stage('place', service), spots: 'any', success: 1 }] },
      finish: {},
      autos: [],
      reliability: { absent: 0, stops: 0 },
      fouls: { minorPerMatch: 0, majorPerMatch: 0 },
      defence: { slowdown: 0, minorPerMinute: 0, majorPerMinute: 0 },
    },
    start: 'start',
    auto: null,
    role: { sources: ['stack'], goals: ['crane'], finishes: [], defend: null },
    finish: { mode: 'best' },
    holdSeconds: {},
    adjust: [],
  }
}

export const three = (option: Option) => [option, option, option]
export const fixed = (seconds: number): Duration => ({ kind: 'fixed', seconds })
