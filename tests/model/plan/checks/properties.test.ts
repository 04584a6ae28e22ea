import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Duration, Game, Option, Robot, Stage, Trip } from '../../../../src/model/documents/types.ts'
import { Planner, plan } from '../../../../src/model/plan/index.ts'
import type { PlanReport } from '../../../../src/model/plan/types.ts'
import { inLongForm } from '../../../browser/longForm.ts'
import { type PropertyCase, propertyCase } from './propertyCase.ts'
import { bareRobot, collecting, fixed, optionFor, smallGame } from './smallGame.ts'

const holds = (property: fc.IProperty<[PropertyCase]> | fc.IProperty<[PropertyCase, number]>) =>
  fc.assert(property as fc.IProperty<unknown>, { numRuns: inLongForm ? 60 : 15, seed: 20 })

const total = (game: Game, option: Option) => new Planner(game).value(option)
const sum = (values: number[]) => values.reduce((all, value) => all + value, 0)

function times(duration: Duration, factor: number): Duration {
  switch (duration.kind) {
    case 'fixed':
      return { kind: 'fixed', seconds: duration.seconds * factor }
    case 'range':
      return {
        kind: 'range',
        low: duration.low * factor,
        likely: duration.likely * factor,
        high: duration.high * factor,
      }
    case 'lognormal':
      return { ...duration, median: duration.median * factor }
    case 'samples':
      return { kind: 'samples', seconds: duration.seconds.map((seconds) => seconds * factor) }
  }
}

/** One stage of a trip takes less of its time; in a trip given whole, the whole. */
function quicker<T extends Trip>(trip: T, which: number): T {
  if ('whole' in trip) return { ...trip, whole: times(trip.whole, 0.7) }
  const chosen = which % trip.stages.length
  return {
    ...trip,
    stages: trip.stages.map((stage, i) => (i === chosen ? { ...stage, duration: times(stage.duration, 0.7) } : stage)),
  }
}

function withQuickerStage(robot: Robot, which: number): Robot {
  if (which % 3 === 0)
    return { ...robot, collect: { ...robot.collect, source0: quicker(robot.collect['source0']!, which) } }
  if (which % 3 === 1) {
    return { ...robot, score: { ...robot.score, goal0: robot.score['goal0']!.map((entry) => quicker(entry, which)) } }
  }
  return { ...robot, finish: { ...robot.finish, finish0: quicker(robot.finish['finish0']!, which) } }
}

describe('every plan', () => {
  it('is worth no less when a stage is faster', () => {
    holds(
      fc.property(propertyCase, fc.nat(5), ({ game, option }, which) => {
        const faster = { ...option, robot: withQuickerStage(option.robot, which) }
        expect(total(game, faster)).toBeGreaterThan(total(game, option) - 1e-6)
      }),
    )
  })

  it('has probabilities that sum to 1 and a distribution whose mean is the value', () => {
    holds(
      fc.property(propertyCase, ({ game, option }) => {
        const report = plan(game, option)
        // Listed are points with a chance above 1e-11, reached through states with a chance above 1e-10.
        expect(sum(report.distribution.map(([, chance]) => chance))).toBeCloseTo(1, 7)
        // Chances below 1e-10 are not followed: measured up to 5e-4 points apart.
        // Held pieces bring many amounts, each with a smaller chance: up to 1.4e-3.
        const bound = holdsLoads({ game, option }) ? 2e-3 : 1e-3
        expect(Math.abs(meanOf(report) - report.expected.total)).toBeLessThan(bound)
        for (const [goal, chances] of Object.entries(report.pieces)) {
          expect(sum(chances.map(([, chance]) => chance))).toBeCloseTo(1, 7)
          expect(sum(chances.map(([pieces, chance]) => pieces * chance))).toBeCloseTo(
            report.expected.goals[goal]!.pieces,
            3,
          )
        }
      }),
    )
  })

  it('is worth every held piece from its own time', () => {
    const { game, option, points } = heldLoads()
    expect(total(game, option)).toBeCloseTo(points, 9)
  })

  it('pays held pieces of one load each from its own time, in the distribution too', () => {
    const { game, option, points } = heldLoads()
    expect(meanOf(plan(game, option))).toBeCloseTo(points, 6)
  })

  it.each([
    { capacity: null, success: 1 },
    { capacity: 4, success: 1 },
    { capacity: 3, success: 0.5 },
  ])('pays held pieces whose times vary, cut by the buzzer or not, what all courses of play do: %j', (of) => {
    const { game, option, points } = heldLoadsOfChance(of)
    expect(total(game, option)).toBeCloseTo(points, 9)
    expect(meanOf(plan(game, option))).toBeCloseTo(points, 6)
  })

  it('adds up: autonomous, adjustments, goals and finishes are the total', () => {
    holds(
      fc.property(propertyCase, ({ game, option }) => {
        const { expected } = plan(game, option)
        const parts = [...Object.values(expected.goals), ...Object.values(expected.finishes)].map(
          ({ points }) => points,
        )
        expect(expected.autonomous + expected.adjust + sum(parts)).toBeCloseTo(expected.total, 9)
        // Forwards a chance below 1e-12 is not followed, backwards nothing is left out.
        expect(Math.abs(expected.total - total(game, option))).toBeLessThan(1e-6)
      }),
    )
  })

  it('is worth at least as much as skipping the finish, and as leaving at any one time', () => {
    holds(
      fc.property(propertyCase, fc.nat(250), ({ game, option }, at) => {
        const best = total(game, option)
        expect(best).toBeGreaterThan(total(game, { ...option, finish: { mode: 'skip' } }) - 1e-9)
        expect(best).toBeGreaterThan(total(game, { ...option, finish: { mode: 'always', at: at / 10 } }) - 1e-9)
      }),
    )
  })

  it('is worth three times as much when everything pays three times as much', () => {
    holds(
      fc.property(propertyCase, ({ game, option }) => {
        expect(total(payingThreeTimes(game), option)).toBeCloseTo(3 * total(game, option), 8)
      }),
    )
  })

  it('is worth the same with room for more than can be placed as with endless room', () => {
    holds(
      fc.property(propertyCase, ({ game, option }) => {
        expect(total(withCapacity(game, 500), option)).toBeCloseTo(total(withCapacity(game, null), option), 9)
      }),
    )
  })

  it('is worth no less with more room', () => {
    holds(
      fc.property(propertyCase, ({ game, option }) => {
        expect(total(withCapacity(game, 3), option)).toBeGreaterThan(total(withCapacity(game, 2), option) - 1e-9)
      }),
    )
  })

  it('is the same with an obstacle off every route', () => {
    holds(
      fc.property(propertyCase, ({ game, option }) => {
        // All spots lie at x from 4 to 16 and y from 2 to 8, where straight lines between them stay.
        const bollard: [number, number][] = [
          [0.5, 0.5],
          [1.2, 0.5],
          [0.8, 1.1],
        ]
        const turned = bollard.map(([x, y]): [number, number] => [40 - x, 10 - y])
        const obstacles = [
          { id: 'near', name: 'Near bollard', outline: bollard },
          { id: 'far', name: 'Far bollard', outline: turned },
        ]
        const built = { ...game, field: { ...game.field, obstacles } }
        expect(plan(built, option)).toEqual(plan(game, option))
      }),
    )
  })

  it('does not depend on the order in which the places are listed', () => {
    holds(
      fc.property(propertyCase, ({ game, option }) => {
        const turned = {
          ...game,
          sources: game.sources.toReversed(),
          goals: game.goals.toReversed(),
          finishes: game.finishes.toReversed(),
        }
        expect(total(turned, option)).toBeCloseTo(total(game, option), 8)
      }),
    )
  })
})

/** Nine trips of 1.6 s in 15 s with two pieces each, which pay for 4 s, or for what is left: 3.8, 2.5, 2.2, 0.9, 0.6. */
function heldLoads(): PropertyCase & { points: number } {
  const game = smallGame({
    teleop: 15,
    sources: [{ id: 'source' }],
    goals: [{ id: 'goal', points: 1, hold: true }],
  })
  const place = { id: 'place', name: 'Place', duration: fixed(0.3), after: ['drive'], each: true }
  const robot = bareRobot({
    carries: { piece: 2 },
    collect: { source: collecting(fixed(1)) },
    score: { goal: [{ stages: [place], spots: 'any', success: 0.05 }] },
  })
  return { game, option: optionFor(game, robot), points: 0.05 * (13 * 4 + 3.8 + 2.5 + 2.2 + 0.9 + 0.6) }
}

/**
 * As above in 5 s, but a piece takes 0.3 s or 1.1 s to place, and there may be too little room for a load. What it is worth is
 * found by playing out every course of it: two times and two outcomes per piece, and the buzzer.
 */
function heldLoadsOfChance({ capacity, success }: { capacity: number | null; success: number }) {
  const teleop = 5
  const game = smallGame({
    teleop,
    sources: [{ id: 'source' }],
    goals: [{ id: 'goal', points: 1, hold: true, capacity }],
  })
  const times = [0.3, 1.1]
  const place: Stage = {
    ...{ id: 'place', name: 'Place', after: ['drive'], each: true },
    duration: { kind: 'samples', seconds: times },
  }
  const robot = bareRobot({
    carries: { piece: 2 },
    collect: { source: collecting(fixed(0.6)) },
    score: { goal: [{ stages: [place], spots: 'any', success }] },
  })
  /** Points to come with so much time left, pieces in hand, and room. */
  const from = (left: number, load: number, room: number): number => {
    if (room === 0) return 0
    if (load === 0) return left < 0.6 - 1e-9 ? 0 : from(left - 0.6, 2, room)
    return times.reduce((all, takes) => {
      const after = left - takes
      if (after < -1e-9) return all
      const hit = Math.min(4, after) + from(after, load - 1, room - 1)
      const miss = success < 1 ? from(after, load - 1, room) : 0
      return all + (success * hit + (1 - success) * miss) / times.length
    }, 0)
  }
  return { game, option: optionFor(game, robot), points: from(teleop, 0, capacity ?? 99) }
}

const meanOf = ({ distribution }: PlanReport) => sum(distribution.map(([points, chance]) => points * chance))

function holdsLoads({ game, option }: PropertyCase): boolean {
  return game.goals.some(({ award }) => award.kind === 'hold') && option.robot.carries['piece'] !== 1
}

function payingThreeTimes(game: Game): Game {
  return {
    ...game,
    goals: game.goals.map((goal) => ({
      ...goal,
      award:
        goal.award.kind === 'each'
          ? { kind: 'each', auto: 3 * goal.award.auto, teleop: 3 * goal.award.teleop }
          : {
              kind: 'hold',
              autoPerSecond: 3 * goal.award.autoPerSecond,
              teleopPerSecond: 3 * goal.award.teleopPerSecond,
            },
    })),
    finishes: game.finishes.map((finish) => ({ ...finish, points: 3 * finish.points })),
  }
}

function withCapacity(game: Game, capacity: number | null): Game {
  return { ...game, goals: game.goals.map((goal) => ({ ...goal, capacity })) }
}
