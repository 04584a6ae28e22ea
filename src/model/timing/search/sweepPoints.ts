import type { Mechanism } from '../../documents/mechanism.ts'
import type { Game, Option } from '../../documents/types.ts'
import { ModelError } from '../../errors.ts'
import { Planner } from '../../plan/index.ts'
import { type Filled, filled, placesToPlan } from './fill.ts'
import { gearingOf, searchedOf } from './gearing.ts'
import { followersOf, pointsAt } from './points.ts'
import { type Sweep, type SweepResult, sweep } from './sweep.ts'

/** Whose match a sweep is to tell the points of. */
export interface SweptMatch {
  game: Game
  option: Option
  /** Id of the robot's mechanism whose gearing is searched; it is taken with the sweep's input. */
  mechanism: string
}

/** Expected points of a match over a sweep. */
export interface MatchPoints {
  /** With the input's own gearing; null where the mechanism can not do it. */
  own: number | null
  /** Point by point as in the sweep; null where it can not be done. `off` is by about how much a line between plans may miss. */
  points: Filled[]
}

export type SweepAnswer = SweepResult & { match?: MatchPoints }

/** Plans are on the grid of beliefs, so that differences hold and totals may differ by hundredths from a plan on its own. */
const grid = 0.25

/**
 * A sweep with what it does to the match, where one is given: planned at a few reductions, on the lines between them
 * elsewhere.
 *
 * @throws ModelError 'invalid' where the robot has no such mechanism or nothing follows it, and as a plan does
 */
export function sweepMatch({ match, ...request }: Sweep & { match?: SweptMatch }): SweepAnswer {
  const result = sweep(request)
  return match ? { ...result, match: matchPoints(request, match, result) } : result
}

function matchPoints(
  request: Sweep,
  { game, option, mechanism: id }: SweptMatch,
  { points }: SweepResult,
): MatchPoints {
  const { robot } = option
  const found = robot.mechanisms?.find((each) => each.id === id && searchedOf(each)?.calculator === request.calculator)
  if (!found)
    throw new ModelError('invalid', `The robot has no ${request.calculator} mechanism with the id “${id}”`, place)
  const mechanism = { ...found, input: { ...found.input, ...request.input } } as Mechanism
  const mechanisms = robot.mechanisms!.map((each) => (each === found ? mechanism : each))
  const given = { option: { ...option, robot: { ...robot, mechanisms } }, mechanism: id }
  const { stages, drive } = followersOf(given.option.robot, id)
  if (stages.length === 0 && !drive) {
    throw new ModelError(
      'invalid',
      `Nothing of the robot follows the mechanism “${id}”, so that its gearing changes no points`,
      place,
    )
  }
  const planner = new Planner(game, grid)
  const counts = [...new Set(points.map(({ motors }) => motors))]
  return {
    own: pointsAt(planner, given, gearingOf(request.input)).points,
    points: counts.flatMap((motors) => {
      const row = points.filter((point) => point.motors === motors)
      const possible = row.map(({ seconds }) => seconds !== null)
      const planned = new Map<number, number | null>()
      for (let next = placesToPlan(possible, planned); next.length > 0; next = placesToPlan(possible, planned)) {
        for (const at of next) planned.set(at, pointsAt(planner, given, row[at]!).points)
      }
      return filled(possible, planned)
    }),
  }
}

const place = ['match', 'mechanism']
