import { type StoredAir, sameLeg } from '../../documents/air.ts'
import type { TimedLeg } from '../../documents/timing.ts'
import type { Game, Option } from '../../documents/types.ts'
import { ModelError } from '../../errors.ts'
import { type ExpectedTrips, expectedTrips, Planner } from '../../plan/index.ts'
import type { AirAnswer } from '../answers.ts'
import { timing } from '../calculate.ts'
import type { Remark } from '../types.ts'
import { compressorWarnings, whyNot } from './air.ts'
import { airOfRobot } from './airOfRobot.ts'
import { demandOf } from './demand.ts'
import { type AirOfRobot, type AirOverPlan, airOverPlan } from './overPlan.ts'
import { type SlowedStage, slowedByAir } from './slowed.ts'
import { supplyNumbers } from './strokesOf.ts'

/** One kind of trip: how many of it a match is expected to have, and the free air that each takes (m³ at the room's pressure). */
export interface AirTrips {
  leg: TimedLeg
  expected: number
  freeAir: number
}

/** The budget of equal cycles: the collect and the score trip that the plan does most, again and again. */
export interface AirBudget {
  collect: TimedLeg | null
  score: TimedLeg
  /** From cycle to cycle: teleop over the expected score trips (s). */
  cycleSeconds: number
  answer: AirAnswer
}

/** Stored air of an option through its plan, or why it can not be stored so. */
export type AirPlan =
  | (AirOverPlan & {
      possible: true
      /** What takes air in teleop, most first. */
      trips: AirTrips[]
      /** Free air that autonomous takes (m³). */
      autonomous: number
      slowed: SlowedStage[]
      /** Null where no trip that the plan does takes air. */
      budget: AirBudget | null
      warnings: Remark[]
    })
  | { possible: false; why: Remark; warnings: Remark[] }

/**
 * Stored air through a match: pressure over the expected trips, when the working pressure is lost, what that costs, and what
 * a second tank is worth. The points of a plan are those with air that always lasts.
 *
 * @param planner of the same game, to use what it knows already
 * @throws ModelError 'invalid' where the robot has no stored air, and as a plan does.
 */
export function airPlan(game: Game, option: Option, planner: Planner = new Planner(game)): AirPlan {
  const { air } = option.robot
  if (!air) throw new ModelError('invalid', 'The robot has no stored air', ['option', 'robot', 'air'])
  const warnings = compressorWarnings(air)
  const why = whyNot(air)
  if (why) return { possible: false, why, warnings }
  const planned = planner.solved(option)
  const trips = expectedTrips(planned)
  const used = airOfRobot(game, option, air)
  const slowed = slowedByAir(option, air)
  const over = airOverPlan(game, { option, slowed: slowed.option, air: used }, { planner, planned, trips })
  const taken = trips
    .map((each) => ({ leg: each.leg, expected: sum(each.ended), freeAir: freeAirOf(used, each.leg) }))
    .filter(({ freeAir }) => freeAir > 0)
    .sort((a, b) => b.expected * b.freeAir - a.expected * a.freeAir)
  return {
    possible: true,
    ...over,
    trips: taken,
    autonomous: demandOf({ ...air, strokes: used.before.strokes }).freeAir,
    slowed: slowed.stages,
    budget: budgetOf(game, { air, used, trips }),
    warnings,
  }
}

const sum = (numbers: Float64Array): number => numbers.reduce((total, each) => total + each, 0)

const strokesIn = ({ trips }: AirOfRobot, leg: TimedLeg) => trips.find((each) => sameLeg(each.leg, leg))?.strokes ?? []

const freeAirOf = (used: AirOfRobot, leg: TimedLeg): number =>
  demandOf({ ...used, strokes: strokesIn(used, leg) }).freeAir

function budgetOf(
  game: Game,
  { air, used, trips }: { air: StoredAir; used: AirOfRobot; trips: readonly ExpectedTrips[] },
): AirBudget | null {
  const most = (kind: TimedLeg['kind']) =>
    trips.filter(({ leg }) => leg.kind === kind).toSorted((a, b) => sum(b.ended) - sum(a.ended))[0]?.leg ?? null
  const [collect, score] = [most('collect'), most('score')]
  if (!score) return null
  const strokes = [...(collect ? strokesIn(used, collect) : []), ...strokesIn(used, score)]
  const scored = trips.filter(({ leg }) => leg.kind === 'score').reduce((total, { ended }) => total + sum(ended), 0)
  if (demandOf({ ...air, strokes }).volume <= 0) return null
  const cycleSeconds = game.clock.teleop / scored
  const matchSeconds = used.before.seconds + game.clock.teleop
  const answer = timing('air', { ...supplyNumbers(air), strokes, cycleSeconds, matchSeconds })
  return { collect, score, cycleSeconds, answer }
}
