import type { Game } from '../documents/types.ts'
import { bestPolicy, bestValue } from './backward.ts'
import { valueAlong } from './forward.ts'
import type { FormProblem, Framed } from './planner.ts'
import { alwaysAt, type Problem } from './problem.ts'
import type { Call } from './types.ts'

/** The scan in tenths of a second: first every two seconds, then up the slopes by half seconds, then by tenths. */
const wide = 20
const half = 5
const hills = 2

/** The plan that a call is found for, the same on a coarse grid, and there with a few legs alone. */
interface Scanned {
  solved: Framed
  coarse: Framed
  few: Problem
}

/**
 * The one time left t for which `always at t` is worth most, up to twice the endgame, and what calling 3 s earlier or
 * later loses (points). The scan runs on the coarse plan: over all times with form 1 and few legs, and from the best hills of that with
 * all legs and forms. Its best half second is then improved, tenth by tenth, on the plan itself, from which all figures come.
 * A robot for which nothing is worth doing before the call stops here, where the mode `always` lets it wait: the
 * reference values read it so (they differ by up to 0.15 points, and only where form spreads).
 * `fixed` is what does not depend on it: autonomous and adjustments.
 */
export function callOf(game: Game, { solved, coarse, few }: Scanned, fixed: number): Call {
  const { problem } = solved
  const last = Math.round(Math.min(2 * game.clock.endgame, problem.steps * problem.step) * 10)
  const plain = remembered((tenths) => valueAt({ problem: few, forms: [] }, tenths / 10))
  const rough = remembered((tenths) => valueAt(coarse, tenths / 10))
  const exact = remembered((tenths) => fixed + valueAt(solved, tenths / 10))
  const tops = hillsOf(plain, last).map((at) => climb(rough, at, last, half, 4))
  const best = climb(exact, tops.sort(by(rough))[0] as number, last, 1, 2)
  return {
    at: best / 10,
    points: exact(best),
    early3: exact(best) - exact(best + 30),
    late3: exact(best) - exact(Math.max(0, best - 30)),
  }
}

const by = (worth: (tenths: number) => number) => (a: number, b: number) => worth(b) - worth(a) || a - b

/** The times of a wide scan that no neighbour surpasses, the best of them. */
function hillsOf(worth: (tenths: number) => number, last: number): number[] {
  const times = Array.from({ length: Math.floor(last / wide) + 1 }, (_, i) => i * wide)
  const top = times.filter((at) =>
    [at - wide, at + wide].every((other) => other < 0 || other > last || worth(other) <= worth(at)),
  )
  return top.sort(by(worth)).slice(0, hills)
}

/** Up the slope by `stride`; some strides are looked ahead, so that a flat one does not stop it. */
function climb(worth: (tenths: number) => number, from: number, last: number, stride: number, ahead: number): number {
  let best = from
  for (;;) {
    const around = Array.from({ length: ahead }, (_, i) => [best - (i + 1) * stride, best + (i + 1) * stride])
    const next = around.flat().find((at) => at >= 0 && at <= last && worth(at) > worth(best) + 1e-12)
    if (next === undefined) return best
    best = next
  }
}

function remembered(worth: (tenths: number) => number): (tenths: number) => number {
  const known = new Map<number, number>()
  return (tenths) => {
    const points = known.get(tenths) ?? worth(tenths)
    known.set(tenths, points)
    return points
  }
}

/** Teleop's expected points when the call comes at `at` seconds left. */
function valueAt(solved: Framed, at: number): number {
  const rules = alwaysAt(at, solved.problem.step, false)
  if (solved.forms.length < 2) return bestValue(solved.problem, rules)
  const { policy, value } = bestPolicy(solved.problem, rules)
  const along = (run: FormProblem) => (run.factor === 1 ? value : valueAlong({ ...run.problem, rules }, policy).value)
  return solved.forms.reduce((sum, run) => sum + run.weight * along(run), 0)
}
