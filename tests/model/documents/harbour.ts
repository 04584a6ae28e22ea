import type { Game, Option, Robot } from '../../../src/model/documents/index.ts'

/** A small game of its own for tests of documents and of the API; every call gives a new one to change. */
export function harbour(): Game {
  return {
    format: 1,
    id: 'harbour',
    name: 'Harbour',
    pieces: [
      { id: 'buoy', name: 'Buoy' },
      { id: 'net', name: 'Net' },
    ],
    clock: { auto: 15, pause: 3, teleop: 60, endgame: 20 },
    field: {
      length: 12,
      width: 6,
      clearance: 0.05,
      symmetry: 'rotate',
      obstacles: [
        {
          id: 'wall-a',
          name: 'Wall A',
          outline: [
            [4, 0.5],
            [4.5, 0.5],
            [4.5, 2],
            [4, 2],
          ],
        },
        {
          id: 'wall-b',
          name: 'Wall B',
          outline: [
            [8, 5.5],
            [7.5, 5.5],
            [7.5, 4],
            [8, 4],
          ],
        },
      ],
    },
    starts: [
      { id: 'left', name: 'Left', at: [1, 2] },
      { id: 'right', name: 'Right', at: [1, 4] },
    ],
    sources: [
      {
        id: 'slip',
        name: 'Slip',
        piece: 'buoy',
        spots: [{ id: 'slip.1', at: [11, 3] }],
        slots: 1,
        stock: null,
        restock: null,
        shared: false,
      },
    ],
    goals: [
      {
        id: 'pier',
        name: 'Pier',
        accepts: ['buoy'],
        spots: [
          { id: 'pier.1', at: [2, 1] },
          { id: 'pier.2', at: [2, 5] },
        ],
        slots: 1,
        capacity: 6,
        award: { kind: 'each', auto: 4, teleop: 3 },
      },
      {
        id: 'mast',
        name: 'Mast',
        accepts: ['buoy', 'net'],
        spots: [{ id: 'mast.1', at: [6, 3] }],
        slots: 1,
        capacity: null,
        award: { kind: 'hold', autoPerSecond: 1, teleopPerSecond: 1 },
      },
    ],
    finishes: [
      { id: 'dock', name: 'Dock', spots: [{ id: 'dock.1', at: [3, 3] }], slots: 2, points: 2 },
      { id: 'davit', name: 'Davit', spots: [{ id: 'davit.1', at: [5.5, 5] }], slots: 1, points: 10 },
    ],
    leave: { points: 2 },
    sets: [{ id: 'fleet', name: 'Fleet', needs: { pier: 2 }, points: 1 }],
    bonuses: [
      {
        id: 'busy',
        name: 'Busy',
        rankingPoints: 1,
        points: 0,
        metric: { kind: 'pieces', goals: ['pier'] },
        atLeast: { local: 8, final: 12 },
        scope: 'own',
      },
    ],
    // biome-ignore lint/suspicious/noThenProperty: the model's own name for the order of tie-breakers
    ranking: { win: 2, tie: 1, loss: 0, per: 'match', then: ['score', { pieces: ['pier'] }] },
    fouls: { minor: 2, major: 5 },
    limits: { mass: 60, cost: 5000 },
  }
}

export function tern(): Robot {
  return {
    format: 1,
    id: 'tern',
    name: 'Tern',
    footprint: { length: 0.8, width: 0.7 },
    drive: {
      topSpeed: 3.5,
      acceleration: 3,
      deceleration: 4,
      pace: { kind: 'range', low: 1, likely: 1.1, high: 1.5 },
    },
    form: { spread: 1 },
    carries: { buoy: 2 },
    preload: { piece: 'buoy', count: 1 },
    collect: {
      slip: {
        stages: [
          { id: 'lower', name: 'Lower', duration: { kind: 'fixed', seconds: 0.8 }, after: [] },
          {
            id: 'take',
            name: 'Take in',
            duration: { kind: 'range', low: 0.5, likely: 1, high: 2 },
            after: ['drive', 'lower'],
            each: true,
          },
        ],
        success: 0.9,
        retry: { kind: 'fixed', seconds: 1.5 },
      },
    },
    score: {
      pier: [
        {
          stages: [
            {
              id: 'drop',
              name: 'Drop',
              duration: { kind: 'lognormal', median: 1, spread: 1.2 },
              after: ['drive'],
              each: true,
            },
          ],
          spots: ['pier.1', 'pier.2'],
          success: 0.95,
        },
      ],
      mast: [
        {
          whole: { kind: 'samples', seconds: [5, 6, 6.5, 8] },
          spots: 'any',
          success: 0.7,
        },
      ],
    },
    finish: {
      dock: { stages: [], success: 1, otherwise: null },
      davit: {
        stages: [{ id: 'winch', name: 'Winch', duration: { kind: 'fixed', seconds: 4 }, after: ['drive'] }],
        success: 0.8,
        otherwise: 'dock',
      },
    },
    autos: [
      {
        id: 'one',
        name: 'One on the pier',
        starts: ['left'],
        steps: [{ at: 5, goal: 'pier', piece: 'buoy', count: 1, success: 0.9, needsPrevious: false }],
        leaves: 1,
        endsAt: 'pier.1',
        holding: null,
        takes: [{ source: 'slip', count: 1 }],
      },
    ],
    reliability: { absent: 0.02, stops: 0.03 },
    fouls: { minorPerMatch: 0.2, majorPerMatch: 0 },
    defence: { slowdown: 0.2, minorPerMinute: 0.1, majorPerMinute: 0 },
    budget: { mass: 48, cost: 3000, hours: 300, readyBy: '2031-02-01' },
  }
}

export function ternBest(): Option {
  return {
    format: 1,
    id: 'tern-best',
    name: 'Tern, finish when it pays',
    robot: tern(),
    start: 'left',
    auto: 'one',
    role: { sources: ['slip'], goals: ['pier', 'mast'], finishes: ['dock', 'davit'], defend: null },
    finish: { mode: 'best' },
    holdSeconds: { mast: 12 },
    adjust: [],
  }
}
