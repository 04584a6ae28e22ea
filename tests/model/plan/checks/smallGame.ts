import type {
  Duration,
  FinishMode,
  Game,
  Goal,
  Load,
  Option,
  Point,
  Robot,
} from '../../../../src/model/documents/types.ts'

/** The rules of a bare game on an empty field: only what a check needs, everything else left out. */
export interface Rules {
  teleop: number
  start?: Point
  sources?: { id: string; piece?: string; at?: Point }[]
  goals?: { id: string; pieces?: string[]; ats?: Point[]; points: number; capacity?: number | null; hold?: boolean }[]
  finishes?: { id: string; at?: Point; points: number }[]
}

const middle: Point = [20, 5]

export function smallGame(rules: Rules): Game {
  const pieces = [...new Set((rules.sources ?? []).map((source) => source.piece ?? 'piece').concat('piece'))]
  return {
    format: 1,
    id: 'small',
    name: 'Small',
    pieces: pieces.map((id) => ({ id, name: id })),
    clock: { auto: 15, pause: 0, teleop: rules.teleop, endgame: Math.min(30, rules.teleop) },
    field: { length: 40, width: 10, clearance: 0, symmetry: 'rotate', obstacles: [] },
    starts: [{ id: 'start', name: 'Start', at: rules.start ?? middle }],
    sources: (rules.sources ?? []).map((source) => ({
      id: source.id,
      name: source.id,
      piece: source.piece ?? 'piece',
      spots: [{ id: `${source.id}.spot`, at: source.at ?? middle }],
      slots: 1,
      stock: null,
      restock: null,
      shared: false,
    })),
    goals: (rules.goals ?? []).map(
      (goal): Goal => ({
        id: goal.id,
        name: goal.id,
        accepts: goal.pieces ?? ['piece'],
        spots: (goal.ats ?? [middle]).map((at, i) => ({ id: `${goal.id}.spot${i || ''}`, at })),
        slots: 1,
        capacity: goal.capacity ?? null,
        award: goal.hold
          ? { kind: 'hold', autoPerSecond: goal.points, teleopPerSecond: goal.points }
          : { kind: 'each', auto: goal.points, teleop: goal.points },
      }),
    ),
    finishes: (rules.finishes ?? []).map((finish) => ({
      id: finish.id,
      name: finish.id,
      spots: [{ id: `${finish.id}.spot`, at: finish.at ?? middle }],
      slots: 1,
      points: finish.points,
    })),
    leave: null,
    sets: [],
    bonuses: [],
    // biome-ignore lint/suspicious/noThenProperty: the model's own name for the order of tie-breakers
    ranking: { win: 2, tie: 1, loss: 0, per: 'match', then: [] },
    fouls: { minor: 0, major: 0 },
  }
}

/** A robot that can do nothing yet; checks add their trips. */
export function bareRobot(trips: Partial<Robot>): Robot {
  return {
    format: 1,
    id: 'robot',
    name: 'Robot',
    footprint: { length: 0.1, width: 0.1 },
    drive: { topSpeed: 4, acceleration: 3, deceleration: 4, pace: { kind: 'fixed', seconds: 1 } },
    form: { spread: 1 },
    carries: { piece: 1 },
    preload: null,
    collect: {},
    score: {},
    finish: {},
    autos: [],
    reliability: { absent: 0, stops: 0 },
    fouls: { minorPerMatch: 0, majorPerMatch: 0 },
    defence: { slowdown: 0, minorPerMinute: 0, majorPerMinute: 0 },
    ...trips,
  }
}

/** Everything that the robot and the game share, from the start, without a routine. */
export function optionFor(game: Game, robot: Robot, finish: FinishMode = { mode: 'best' }): Option {
  return {
    format: 1,
    id: 'option',
    name: 'Option',
    robot,
    start: 'start',
    auto: null,
    role: {
      sources: game.sources.map((source) => source.id),
      goals: game.goals.map((goal) => goal.id),
      finishes: game.finishes.map((end) => end.id),
      defend: null,
    },
    finish,
    holdSeconds: Object.fromEntries(
      game.goals.filter((goal) => goal.award.kind === 'hold').map((goal) => [goal.id, 4]),
    ),
    adjust: [],
  }
}

export const fixed = (seconds: number): Duration => ({ kind: 'fixed', seconds })

/** A collect leg of this whole time that never fails. */
export const collecting = (whole: Duration): Robot['collect'][string] => ({ whole, success: 1, retry: null })

/** A score leg of this whole time that never misses. */
export const scoring = (whole: Duration): Robot['score'][string] => [{ whole, spots: 'any', success: 1 }]

/** A finish leg of this whole time that never fails. */
export const finishing = (whole: Duration): Robot['finish'][string] => ({ whole, success: 1, otherwise: null })

/** Loads of one piece kind. */
export const load = (count: number, piece = 'piece'): Load => ({ piece, count })
