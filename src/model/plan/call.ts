import type { Game } from '../documents/types.ts'
import { solve } from './backward.ts'
import { flowOf } from './forward.ts'
import { flowValue, type Solved, startValue } from './planner.ts'
import { alwaysAt } from './problem.ts'
import type { Call } from './types.ts'

const coarse = 0.5
const fine = 0.1

/**
 * The one time left t for which `always at t` is worth most, by a scan of 0.5 s up to twice the endgame and one of
 * 0.1 s around the best, and what calling 3 s earlier or later loses (points).
 * A robot for which nothing is worth doing before the call stops here, where the mode `always` lets it wait: the
 * reference values read it so (they differ by up to 0.15 points, and only where form spreads).
 * `fixed` is what does not depend on it: autonomous and adjustments.
 */
export function callOf(game: Game, solved: Solved, fixed: number): Call {
  const { problem } = solved
  const known = new Map<number, number>()
  const worth = (tenths: number): number => {
    let points = known.get(tenths)
    if (points === undefined) {
      points = fixed + valueAt(solved, tenths * fine)
      known.set(tenths, points)
    }
    return points
  }
  const last = Math.round(Math.min(2 * game.clock.endgame, problem.steps * problem.step) / fine)
  const every = Math.round(coarse / fine)
  let best = 0
  for (let at = 0; at <= last; at += every) if (worth(at) > worth(best) + 1e-12) best = at
  const around = best
  for (let at = Math.max(0, around - every + 1); at <= Math.min(last, around + every - 1); at++)
    if (worth(at) > worth(best) + 1e-12) best = at
  const steps = Math.round(3 / fine)
  return {
    at: best / 10,
    points: worth(best),
    early3: worth(best) - worth(best + steps),
    late3: worth(best) - worth(Math.max(0, best - steps)),
  }
}

/** Teleop's expected points when the call comes at `at` seconds left. */
function valueAt(solved: Solved, at: number): number {
  const rules = alwaysAt(at, solved.problem.step, false)
  const table = solve(solved.problem, rules)
  if (solved.forms.length === 1) return startValue(solved.problem, table)
  return solved.forms.reduce((sum, run) => sum + run.weight * flowValue(flowOf({ ...run.problem, rules }, table)), 0)
}
