import type { HabitDraw } from '../../documents/habit.ts'
import type { Game, Option } from '../../documents/types.ts'
import { piecesBy } from '../../match/habitPoints.ts'

/** Bounds of a factor on times, those of the contract of a habit's draw. */
const bounds = { low: 0.05, high: 20 }

/** Pieces that a robot tries in a match by its habit, with one of its draws, nobody in its way; by the factor on its times. */
function attemptsBy(game: Game, option: Option, draw: HabitDraw): (time: number) => number {
  const { robot } = option
  const sure = Object.fromEntries(game.goals.map(({ id }) => [id, 1]))
  const own = { ...option, auto: null, robot: { ...robot, preload: preloadOf(option) } }
  return piecesBy(game, own, { ...draw, success: sure })
}

/** What it holds when teleop begins, which a routine may say. */
function preloadOf({ robot, auto }: Option) {
  const routine = robot.autos.find(({ id }) => id === auto)
  return routine ? routine.holding : robot.preload
}

/**
 * The factor on a robot's times with which it tries as many pieces as are expected of it: trips that were timed and pieces that
 * were counted inform one rate. Attempts fall nearly as the factor rises, so that a few steps of proportion find it.
 */
export function timeFor(
  game: Game,
  option: Option,
  { attempts, draw, from }: { attempts: number; draw: HabitDraw; from: number },
): number {
  const attemptsAt = attemptsBy(game, option, draw)
  let time = from
  for (let turn = 0; turn < 12; turn++) {
    const now = attemptsAt(time)
    if (!(now > 0)) {
      time = Math.max(bounds.low, time / 2)
      continue
    }
    const ratio = now / Math.max(attempts, 0.02)
    const next = Math.min(bounds.high, Math.max(bounds.low, time * ratio))
    if (Math.abs(next / time - 1) < 1e-3) return next
    time = next
  }
  return time
}
