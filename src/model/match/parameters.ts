import type { HabitDraw } from '../documents/habit.ts'
import type { Option } from '../documents/types.ts'
import { distributionOf } from '../duration/index.ts'
import type { Ground } from './ground.ts'

/** The numbers that an observed robot has in one match. */
export interface Parameters {
  /** In the order of its goals, and of its pieces per trip. */
  readonly goals: Float64Array
  readonly pieces: Float64Array
  readonly absent: number
  readonly stops: number
  /** Time left (s) at which it leaves for a finish, −1 for never. */
  readonly departs: number
  /** Chance of success by place, −1 where it is as the leg says. */
  readonly success: Float64Array
  /** Factor on all times that a uniform number stands for. */
  form(u: number): number
}

/**
 * An observed robot's own numbers with what one draw from its posterior says instead.
 * @param of goals (ids) and pieces per trip in the order in which their shares are given back
 */
export function parametersOf(
  ground: Ground,
  option: Option,
  of: { goals: readonly string[]; pieces: readonly number[] },
  draw: HabitDraw = {},
): Parameters {
  const { habit, form, reliability } = option.robot
  if (!habit) throw new Error('a robot without a habit plays by its plan')
  const goals = draw.goals ?? habit.goals
  const pieces = draw.pieces ?? habit.pieces
  const success = new Float64Array(ground.count).fill(-1)
  for (const [id, chance] of Object.entries({ ...draw.success, ...draw.finish }))
    success[ground.placeOf.get(id) as number] = chance
  const time = draw.time ?? 1
  const forms = distributionOf({ kind: 'lognormal', median: 1, spread: draw.form ?? form.spread })
  return {
    goals: Float64Array.from(of.goals, (id) => (Object.hasOwn(goals, id) ? (goals[id] as number) : 0)),
    pieces: Float64Array.from(of.pieces, (count) => pieces[String(count)] ?? 0),
    absent: draw.absent ?? reliability.absent,
    stops: draw.stops ?? reliability.stops,
    departs: departureOf(option, draw.departs ?? habit.departs),
    success,
    form: (u) => time * forms.quantile(u),
  }
}

/** A way to play that forbids finishes or calls a time goes before the habit. */
function departureOf({ finish }: Option, departs: number): number {
  if (finish.mode === 'skip') return -1
  return finish.mode === 'always' ? finish.at : departs
}
