import { refusal } from '../documents/sentences.ts'
import type { Game, Option } from '../documents/types.ts'
import type { LegBuilder } from '../leg/builder.ts'
import { type Autonomous, autonomousOf } from './autonomous.ts'
import { binomial } from './binomial.ts'
import { graphOf, type PlanGraph, type TravelTime } from './graph.ts'
import { type LegNames, pruned } from './pruned.ts'
import { type Rooms, roomsOf } from './rooms.ts'
import { type LegPay, legPay, type Pay, payOf, type TimedLeg, timedLegsOf } from './timed.ts'

/** What may be done when: `finishFrom` is the greatest time left (steps) at which a finish may begin. */
export interface Rules {
  /** Finishes may begin at this many steps left or fewer; -1 for never. */
  readonly finishFrom: number
  /** Collect and score legs may begin only with more steps left than this; -1 for always. */
  readonly workAbove: number
  /** Whether a robot for which nothing is worth doing before its call waits for it, instead of stopping. */
  readonly waits: boolean
}

/** Everything about one option at one form that the passes over time need. */
export interface Problem {
  readonly graph: PlanGraph
  readonly rooms: Rooms
  /** Teleop in steps, and seconds per step. */
  readonly steps: number
  readonly step: number
  /** Least form factor for which the rooms are exact. */
  readonly fastest: number
  readonly autonomous: Autonomous
  readonly rules: Rules
  readonly timed: readonly TimedLeg[]
  readonly pays: readonly Pay[]
  /** Per leg: expected pay and pieces (score legs), null for the others. */
  readonly legPays: readonly (LegPay | null)[]
  /** Per leg: P(number of successes = b) of a score leg, null for the others. */
  readonly successes: readonly (Float64Array | null)[]
}

/** A state table larger than this is refused rather than left to run. */
const mostStates = 12_000_000

function refuseAbove(states: number): void {
  if (states > mostStates) throw refusal('overBudget', ['tooManyStates', { states, most: mostStates }])
}

export function rulesOf(option: Option, step: number): Rules {
  switch (option.finish.mode) {
    case 'best':
      return { finishFrom: Number.MAX_SAFE_INTEGER, workAbove: -1, waits: false }
    case 'skip':
      return { finishFrom: -1, workAbove: -1, waits: false }
    case 'always':
      return alwaysAt(option.finish.at, step)
  }
}

/** No finish with more than `at` seconds left; from then on nothing else. */
export function alwaysAt(at: number, step: number, waits = true): Rules {
  const steps = Math.floor(at / step + 1e-9)
  return { finishFrom: steps, workAbove: steps, waits }
}

/**
 * @param fastest least form factor under which the problem's rooms must still be exact
 * @param only the legs that may be begun, where not all
 */
export function problemOf(
  game: Game,
  option: Option,
  travel: TravelTime,
  builder: LegBuilder,
  grid: { step: number; fastest: number; only?: LegNames },
): Problem {
  const all = graphOf(game, option, travel)
  const graph = grid.only ? pruned(all, grid.only) : all
  const steps = Math.floor(game.clock.teleop / grid.step + 1e-9)
  // With one room it needs this many at least; the rooms' own tables are as long as the match.
  refuseAbove(graph.nodes.length * (steps + 1))
  const frame = {
    graph,
    steps,
    step: grid.step,
    fastest: grid.fastest,
    autonomous: autonomousOf(game, option, graph.goals),
    rules: rulesOf(option, grid.step),
    pays: graph.goals.map((goal) => payOf(goal, option)),
  }
  const timed = timedLegsOf(graph, builder, 1)
  return complete({ ...frame, rooms: roomsFor(frame, timed) }, timed, null)
}

type Frame = Omit<Problem, 'timed' | 'legPays' | 'successes' | 'rooms'>

/** The same problem where legs take other times: a stage moved. */
export function moved(problem: Problem, timed: readonly TimedLeg[]): Problem {
  const fewest = (leg: TimedLeg) => fewestSteps(problem, leg)
  const as = timed.every((leg, i) => leg === problem.timed[i] || fewest(leg) === fewest(problem.timed[i] as TimedLeg))
  return complete({ ...problem, rooms: as ? problem.rooms : roomsFor(problem, timed) }, timed, problem)
}

/** The same problem with values in every room, also in those that a robot alone can not leave: its partners may. */
export function inEveryRoom(problem: Problem): Problem {
  const none = { probability: 0, points: 0, room: problem.rooms.goals.map(() => 0) }
  const autonomous = { ...problem.autonomous, outcomes: [...problem.autonomous.outcomes, none] }
  const frame = { ...problem, autonomous }
  return complete({ ...frame, rooms: roomsFor(frame, problem.timed) }, problem.timed, problem)
}

function roomsFor(frame: Frame, timed: readonly TimedLeg[]): Rooms {
  const rooms = roomsOf(
    frame.graph,
    timed.map((leg) => fewestSteps(frame, leg)),
    frame.autonomous.outcomes.map((outcome) => [...outcome.room]),
    frame.steps,
  )
  refuseAbove(frame.graph.nodes.length * rooms.size * (frame.steps + 1))
  return rooms
}

/** Of a leg at the quickest form. */
const fewestSteps = ({ fastest }: Frame, { shortest }: TimedLeg): number => Math.max(1, Math.floor(shortest * fastest))

/**
 * The same problem at another form, on the same rooms, so that a policy of the one can be read by the other.
 * @param like a problem of the same game and robot, from which legs with the very same times are taken as they are
 */
export function atForm(problem: Problem, timed: readonly TimedLeg[], like: Problem | null = null): Problem {
  return complete(problem, timed, like)
}

function complete(frame: Frame & Pick<Problem, 'rooms'>, timed: readonly TimedLeg[], like: Problem | null): Problem {
  const same = timed.map((leg, i) => leg === like?.timed[i])
  return {
    ...frame,
    timed,
    legPays: timed.map((leg, i) =>
      same[i] && mostRoom(frame, leg) === mostRoom(like as Problem, leg)
        ? (like?.legPays[i] as LegPay | null)
        : payFor(frame, leg),
    ),
    successes: like?.successes ?? timed.map(({ leg }) => (leg.goal < 0 ? null : binomial(leg.load, leg.success))),
  }
}

function payFor(frame: Frame & Pick<Problem, 'rooms'>, timed: TimedLeg): LegPay | null {
  const goal = timed.leg.goal
  if (goal < 0) return null
  return legPay(timed, frame.pays[goal] as Pay, mostRoom(frame, timed), frame.steps, frame.step)
}

/** The most room that a leg can find; null where there is no limit. */
function mostRoom({ rooms }: Pick<Problem, 'rooms'>, { leg }: TimedLeg): number | null {
  const d = rooms.dimensionOf[leg.goal] ?? -1
  return d < 0 ? null : (rooms.most[d] as number)
}

/** Chance that a leg begun with t steps left has ended by the buzzer, by t. */
export const reachedIn = ({ timed, steps }: Problem, leg: number): Float64Array =>
  (timed[leg] as TimedLeg).reached(steps)

/** Expected points of a finish once it is reached. */
export const finishValue = (leg: { success: number; points: number; otherwise: number }): number =>
  leg.success * leg.points + (1 - leg.success) * leg.otherwise
