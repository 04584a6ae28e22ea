import type { Game, Option } from '../documents/types.ts'
import { ModelError } from '../errors.ts'
import type { LegBuilder } from '../leg/builder.ts'
import { type Autonomous, autonomousOf } from './autonomous.ts'
import { binomial } from './binomial.ts'
import { graphOf, type PlanGraph, type TravelTime } from './graph.ts'
import { type Rooms, roomsOf } from './rooms.ts'
import { cumulative, type LegPay, legPay, type Pay, payOf, type TimedLeg, timedLegsOf } from './timed.ts'

/** What may be done when: `finishFrom` is the greatest time left (steps) at which a finish may begin. */
export interface Rules {
  /** Finishes may begin at this many steps left or fewer; -1 for never. */
  readonly finishFrom: number
  /** Collect and score legs may begin only with more steps left than this; -1 for always. */
  readonly workAbove: number
}

/** Everything about one option at one form that the passes over time need. */
export interface Problem {
  readonly graph: PlanGraph
  readonly rooms: Rooms
  /** Teleop in steps, and seconds per step. */
  readonly steps: number
  readonly step: number
  readonly autonomous: Autonomous
  readonly rules: Rules
  readonly timed: readonly TimedLeg[]
  readonly pays: readonly Pay[]
  /** Per leg: expected pay and pieces (score legs), null for the others. */
  readonly legPays: readonly (LegPay | null)[]
  /** Per leg: P(number of successes = b) of a score leg, null for the others. */
  readonly successes: readonly (Float64Array | null)[]
  /** Per leg: chance that it ends in t steps (finishes), null for the others. */
  readonly reached: readonly (Float64Array | null)[]
}

/** A state table larger than this is refused rather than left to run. */
const mostStates = 12_000_000

export function rulesOf(option: Option, step: number): Rules {
  switch (option.finish.mode) {
    case 'best':
      return { finishFrom: Number.MAX_SAFE_INTEGER, workAbove: -1 }
    case 'skip':
      return { finishFrom: -1, workAbove: -1 }
    case 'always':
      return alwaysAt(option.finish.at, step)
  }
}

/** No finish with more than `at` seconds left; from then on nothing else. */
export function alwaysAt(at: number, step: number): Rules {
  const steps = Math.floor(at / step + 1e-9)
  return { finishFrom: steps, workAbove: steps }
}

export function problemOf(game: Game, option: Option, travel: TravelTime, builder: LegBuilder, step: number): Problem {
  const graph = graphOf(game, option, travel)
  const steps = Math.floor(game.clock.teleop / step + 1e-9)
  const autonomous = autonomousOf(game, option, graph.goals)
  const timed = timedLegsOf(graph, builder, 1)
  const rooms = roomsOf(
    graph,
    timed.map((leg) => leg.shortest),
    autonomous.outcomes.map((outcome) => [...outcome.room]),
    steps,
  )
  const states = graph.nodes.length * rooms.size * (steps + 1)
  if (states > mostStates)
    throw new ModelError(
      'overBudget',
      `the plan would need ${states} states, more than ${mostStates}: fewer loads, spots or capacities would help`,
    )
  const pays = graph.goals.map((goal) => payOf(goal, option))
  return complete({ graph, rooms, steps, step, autonomous, rules: rulesOf(option, step), pays }, timed)
}

type Frame = Omit<Problem, 'timed' | 'legPays' | 'successes' | 'reached'>

/** The same problem with other leg times: another form, or a stage moved. */
export function withTimes(problem: Frame, timed: readonly TimedLeg[]): Problem {
  return complete(problem, timed)
}

function complete(frame: Frame, timed: readonly TimedLeg[]): Problem {
  return {
    ...frame,
    timed,
    legPays: timed.map((leg) => payFor(frame, leg)),
    successes: timed.map(({ leg }) => (leg.goal < 0 ? null : binomial(leg.load, leg.success))),
    reached: timed.map((leg) =>
      leg.leg.to < 0 ? cumulative({ first: leg.shortest, mass: leg.chance }, frame.steps) : null,
    ),
  }
}

function payFor(frame: Frame, timed: TimedLeg): LegPay | null {
  const goal = timed.leg.goal
  if (goal < 0) return null
  return legPay(timed, frame.pays[goal] as Pay, frame.rooms.dimensionOf[goal] !== -1, frame.steps, frame.step)
}

/** Expected points of a finish once it is reached. */
export const finishValue = (leg: { success: number; points: number; otherwise: number }): number =>
  leg.success * leg.points + (1 - leg.success) * leg.otherwise
