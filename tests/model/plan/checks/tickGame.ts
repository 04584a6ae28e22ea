import type { Game, Option, Point } from '../../../../src/model/documents/types.ts'
import { Uniforms } from '../../../../src/model/random/index.ts'
import { bareRobot, finishing, fixed, load, optionFor, smallGame } from './smallGame.ts'

/** Times in ticks of a tenth of a second, places on one line in tenths of a metre: drives at 2 m/s are whole ticks. */
export interface TickGame {
  ticks: number
  start: number
  sources: { id: string; piece: string; at: number; ready: number; each: number; most: number }[]
  goals: {
    id: string
    pieces: string[]
    ats: number[]
    ready: number
    each: number
    points: number
    capacity: number | null
    /** Ticks for which a piece pays `points` per second; null pays once. */
    hold: number | null
  }[]
  finishes: { id: string; at: number; ticks: number; points: number; whole: boolean }[]
  preload: { piece: string; count: number } | null
}

/** A random deterministic game: spots apart, several goals, capacities, loads, pieces that count one by one. */
export function randomTickGame(seed: number, size: 'small' | 'large'): TickGame {
  const stream = new Uniforms(seed)
  const next = () => stream.next()
  const whole = (low: number, high: number) => low + Math.floor(next() * (high - low + 1))
  const place = () => 4 * whole(1, 25)
  const kinds = next() < 0.5 ? ['a'] : ['a', 'b']
  const most: { [piece: string]: number } = { a: whole(1, size === 'small' ? 2 : 4), b: whole(1, 2) }
  const large = size === 'large'
  return {
    ticks: large ? whole(120, 190) : whole(60, 110),
    start: place(),
    sources: Array.from({ length: Math.max(kinds.length, large ? 2 : 1) }, (_, i) => {
      const piece = kinds[i % kinds.length]!
      return { id: `source${i}`, piece, at: place(), ready: whole(0, 20), each: whole(5, 20), most: most[piece]! }
    }),
    goals: Array.from({ length: large ? 3 : 2 }, (_, i) => ({
      id: `goal${i}`,
      pieces: i === 0 || next() < 0.5 ? kinds : [kinds[whole(0, kinds.length - 1)]!],
      ats: large && next() < 0.4 ? [place(), place()] : [place()],
      ready: whole(0, 25),
      each: whole(3, 15),
      points: whole(1, 6),
      capacity: next() < 0.6 ? whole(1, 4) : null,
      hold: next() < 0.25 ? whole(5, 60) : null,
    })),
    finishes: Array.from({ length: whole(0, 2) }, (_, i) => ({
      id: `finish${i}`,
      at: place(),
      ticks: whole(10, 50),
      points: whole(2, 14),
      whole: next() < 0.5,
    })),
    preload: next() < 0.5 ? null : { piece: 'a', count: whole(1, most['a']!) },
  }
}

/** The same game as the plan takes it. */
export function documents(rules: TickGame): { game: Game; option: Option } {
  const point = (at: number): Point => [at / 10, 5]
  const game = smallGame({
    teleop: rules.ticks / 10,
    start: point(rules.start),
    sources: rules.sources.map(({ id, piece, at }) => ({ id, piece, at: point(at) })),
    goals: rules.goals.map((goal) => ({ ...goal, ats: goal.ats.map(point), hold: goal.hold !== null })),
    finishes: rules.finishes.map(({ id, at, points }) => ({ id, at: point(at), points })),
  })
  const stages = ({ ready, each }: { ready: number; each: number }) => ({
    stages: [
      { id: 'ready', name: 'Get ready', duration: fixed(ready / 10), after: [] },
      { id: 'each', name: 'Do each', duration: fixed(each / 10), after: ['drive', 'ready'], each: true },
    ],
  })
  const robot = bareRobot({
    // So quick off the mark that getting up to speed takes no time that the grid could see.
    drive: { topSpeed: 2, acceleration: 1e13, deceleration: 1e13, pace: fixed(1) },
    carries: Object.fromEntries(rules.sources.map(({ piece, most }) => [piece, most])),
    preload: rules.preload && load(rules.preload.count, rules.preload.piece),
    collect: Object.fromEntries(
      rules.sources.map((source) => [source.id, { ...stages(source), success: 1, retry: null }]),
    ),
    score: Object.fromEntries(
      rules.goals.map((goal) => [goal.id, [{ ...stages(goal), spots: 'any' as const, success: 1 }]]),
    ),
    finish: Object.fromEntries(
      rules.finishes.map((end) => [
        end.id,
        end.whole
          ? finishing(fixed(end.ticks / 10))
          : {
              stages: [{ id: 'park', name: 'Park', duration: fixed(end.ticks / 10), after: ['drive'] }],
              success: 1,
              otherwise: null,
            },
      ]),
    ),
  })
  const option = optionFor(game, robot)
  option.holdSeconds = Object.fromEntries(
    rules.goals.flatMap(({ id, hold }) => (hold === null ? [] : [[id, hold / 10]])),
  )
  return { game, option }
}
