import { sameLeg } from '../../documents/air.ts'
import type { Game, Option } from '../../documents/types.ts'
import { type ExpectedTrips, expectedTrips, Planner, type Solved, type WorthLeg } from '../../plan/index.ts'
import { slowing } from '../../plan/slowedFrom.ts'
import type { AirInput, Strokes } from '../inputs.ts'
import { demandOf } from './demand.ts'
import { type Course, course, type Draw } from './match.ts'

/** A robot's stored air, and what each kind of trip takes of it. */
export interface AirOfRobot
  extends Pick<AirInput<number>, 'tank' | 'tanks' | 'stored' | 'working' | 'ambient' | 'leak' | 'compressor'> {
  /** Kinds of trips that are not named take none. `out` and `back` are strokes per trip. */
  trips: { leg: WorthLeg; strokes: Strokes[] }[]
  /** What autonomous and the pause take and how long they are, before teleop begins. */
  before: { seconds: number; strokes: Strokes[] }
}

export interface AirOverPlan {
  /** Time left in teleop (s), falling, with the pressure that the expected trips leave and its cautious bound (Pa). */
  curves: { timeLeft: number[]; pressure: number[]; pressureAdiabatic: number[] }
  /** Time left at which the working pressure is lost (s), and by the cautious bound; null: not in this match. */
  lostAt: number | null
  lostAtAdiabatic: number | null
  /** The same with one tank more. */
  lostWithOneTankMore: number | null
  /** Expected points with air that always lasts, with this air, and with one tank more of the same kind. */
  points: { always: number; withThis: number; withOneTankMore: number }
}

/** Grid of the curves (s). */
const drawnEvery = 1

/**
 * Stored air through the trips that a plan expects: pressure over the match, when the working pressure is lost, and what that
 * costs. From then on legs are those of the slowed option, solved once more; one tank more is worth what it puts off.
 *
 * Expected trips are taken as a flow of air, so that a match with more trips than expected loses its pressure earlier.
 *
 * @param slowed the option with the durations that its stages have once the pressure is lost
 * @param known the option solved already, by the planner that solves the rest
 * @throws ModelError as a plan does, and 'invalid' where the slowed option differs in more than its times.
 */
export function airOverPlan(
  game: Game,
  { option, slowed, air }: { option: Option; slowed: Option; air: AirOfRobot },
  known?: { planner: Planner; planned: Solved; trips: readonly ExpectedTrips[] },
): AirOverPlan {
  const planner = known?.planner ?? new Planner(game)
  const planned = known?.planned ?? planner.solved(option)
  const draws = drawsOf(planned.problem, known?.trips ?? expectedTrips(planned), air)
  const run = (tanks: number) => courseOf(game, air, { tanks, draws })
  const [own, more] = [run(air.tanks), run(air.tanks + 1)]
  const lostAt = timeLeftOf(own.lost, own, game, air)
  const lostWithMore = timeLeftOf(more.lost, more, game, air)
  // Air that lasts is the plan itself: nothing slower has to be solved.
  const slow = lostAt === null && lostWithMore === null ? planned : planner.solved(slowed)
  const points = slowing(option, { planned, slowed: slow })
  const withThis = points(lostAt)
  return {
    curves: curvesOf(own, game, air),
    lostAt,
    lostAtAdiabatic: timeLeftOf(own.lostAdiabatic, own, game, air),
    lostWithOneTankMore: lostWithMore,
    points: {
      always: points(null),
      withThis,
      // Before the loss the plan does not know of it, so that a later one can fit its trips a hair worse. With more air the
      // robot can still play as with less.
      withOneTankMore: lostWithMore === lostAt ? withThis : Math.max(withThis, points(lostWithMore)),
    },
  }
}

const volumeOf = (air: AirOfRobot, strokes: Strokes[]): number => demandOf({ ...air, strokes }).volume

/** What is drawn with so much time since the match's start (s); many small ones, because trips are expected ones. */
function drawsOf(
  { steps, step }: { steps: number; step: number },
  trips: readonly ExpectedTrips[],
  air: AirOfRobot,
): Draw[] {
  const volumes = new Float64Array(steps + 1)
  for (const { leg, ended } of trips) {
    const volume = volumeOf(air, strokesOf(air, leg))
    for (let t = 0; t <= steps; t++) volumes[t] = volumes[t]! + volume * ended[t]!
  }
  const before = { at: air.before.seconds, volume: volumeOf(air, air.before.strokes) }
  const during = Array.from({ length: steps + 1 }, (_, i) => ({
    at: air.before.seconds + i * step,
    volume: volumes[steps - i]!,
  }))
  return [before, ...during]
}

const strokesOf = (air: AirOfRobot, leg: ExpectedTrips['leg']): Strokes[] =>
  air.trips.find((each) => sameLeg(each.leg, leg))?.strokes ?? []

function courseOf(game: Game, air: AirOfRobot, { tanks, draws }: { tanks: number; draws: Draw[] }): Course {
  const { tank, compressor, leak, ambient, before } = air
  const supply = { volume: tank.volume * tanks, compressor, leak, ambient }
  return course(supply, { ...air, until: before.seconds + game.clock.teleop }, draws)
}

function timeLeftOf(lost: number | null, { draws }: Course, game: Game, { before }: AirOfRobot): number | null {
  if (lost === null) return null
  return Math.min(game.clock.teleop, before.seconds + game.clock.teleop - draws[lost]!.at)
}

function curvesOf({ draws }: Course, game: Game, { before }: AirOfRobot): AirOverPlan['curves'] {
  const end = before.seconds + game.clock.teleop
  let next = 0
  const some = draws.filter(({ at }) => {
    if (at < before.seconds + next - 1e-9) return false
    next += drawnEvery
    return true
  })
  return {
    timeLeft: some.map(({ at }) => end - at),
    pressure: some.map(({ after }) => after),
    pressureAdiabatic: some.map(({ afterAdiabatic }) => afterAdiabatic),
  }
}
