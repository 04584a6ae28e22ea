import fc from 'fast-check'
import type { Duration, Game, Option, Point, Robot, Stage } from '../../../../src/model/documents/types.ts'
import { bareRobot, optionFor, smallGame } from './smallGame.ts'

export interface PropertyCase {
  game: Game
  option: Option
}

const tenths = (low: number, high: number) => fc.integer({ min: low * 10, max: high * 10 }).map((value) => value / 10)
const chance = fc.integer({ min: 1, max: 20 }).map((value) => value / 20)
const place: fc.Arbitrary<Point> = fc.tuple(tenths(4, 16), tenths(2, 8))

const duration = (low: number, high: number): fc.Arbitrary<Duration> =>
  fc.oneof(
    tenths(low, high).map((seconds): Duration => ({ kind: 'fixed', seconds })),
    fc.tuple(tenths(low, high), tenths(0, 2), tenths(0, 3)).map(
      ([least, more, most]): Duration => ({
        kind: 'range',
        low: least,
        likely: least + more,
        high: least + more + most,
      }),
    ),
    fc
      .tuple(tenths(Math.max(low, 0.2), high), fc.constantFrom(1, 1.2, 1.5))
      .map(([median, spread]): Duration => ({ kind: 'lognormal', median, spread })),
    fc
      .array(tenths(low, high), { minLength: 3, maxLength: 6 })
      .map((seconds): Duration => ({ kind: 'samples', seconds })),
  )

/** Something that overlaps the drive, then something in place, once per piece or for the whole load. */
const stages: fc.Arbitrary<Stage[]> = fc
  .tuple(duration(0, 3), duration(0.3, 2), fc.boolean())
  .map(([ready, work, each]) => [
    { id: 'ready', name: 'Get ready', duration: ready, after: [] },
    { id: 'work', name: 'Work', duration: work, after: ['drive', 'ready'], each },
  ])

const trip = fc.oneof(
  stages.map((network) => ({ stages: network })),
  duration(1, 5).map((whole) => ({ whole })),
)

const sources = fc.array(fc.record({ at: place, trip, success: fc.constantFrom(1, 0.8), retry: duration(0.5, 2) }), {
  minLength: 1,
  maxLength: 2,
})
const goals = fc.array(
  fc.record({
    at: place,
    points: fc.integer({ min: 1, max: 6 }),
    capacity: fc.option(fc.integer({ min: 1, max: 4 })),
    hold: fc.boolean(),
    trip,
    success: chance,
  }),
  { minLength: 1, maxLength: 2 },
)
const finishes = fc.array(fc.record({ at: place, points: fc.integer({ min: 1, max: 12 }), trip, success: chance }), {
  minLength: 1,
  maxLength: 2,
})

/** A small random game with a robot that can do everything in it. */
export const propertyCase: fc.Arbitrary<PropertyCase> = fc
  .record({
    teleop: fc.integer({ min: 15, max: 30 }),
    start: place,
    carries: fc.integer({ min: 1, max: 3 }),
    preloaded: fc.boolean(),
    pace: fc.constantFrom<Duration>({ kind: 'fixed', seconds: 1 }, { kind: 'range', low: 1, likely: 1.2, high: 2 }),
    sources,
    goals,
    finishes,
  })
  .map((drawn) => {
    const game = smallGame({
      teleop: drawn.teleop,
      start: drawn.start,
      sources: drawn.sources.map(({ at }, i) => ({ id: `source${i}`, at })),
      goals: drawn.goals.map(({ at, points, capacity, hold }, i) => ({
        id: `goal${i}`,
        ats: [at],
        points,
        capacity,
        hold,
      })),
      finishes: drawn.finishes.map(({ at, points }, i) => ({ id: `finish${i}`, at, points })),
    })
    const robot: Robot = bareRobot({
      drive: { topSpeed: 4, acceleration: 3, deceleration: 4, pace: drawn.pace },
      carries: { piece: drawn.carries },
      preload: drawn.preloaded ? { piece: 'piece', count: 1 } : null,
      collect: Object.fromEntries(
        drawn.sources.map(({ trip, success, retry }, i) => [`source${i}`, { ...trip, success, retry }]),
      ),
      score: Object.fromEntries(
        drawn.goals.map(({ trip, success }, i) => [`goal${i}`, [{ ...trip, success, spots: 'any' as const }]]),
      ),
      finish: Object.fromEntries(
        drawn.finishes.map(({ trip, success }, i) => [
          `finish${i}`,
          { ...trip, success, otherwise: i === 0 ? null : 'finish0' },
        ]),
      ),
    })
    return { game, option: optionFor(game, robot) }
  })
