import type { GraphLeg } from './graph.ts'
import { begunOf } from './heldLoad.ts'
import type { FormRun, Solved } from './planner.ts'
import { listed, type Spread, spreadOf } from './spread.ts'
import { pieceTally, pointTally, type Tally } from './tally.ts'
import type { ExpectedPoints, PlanReport } from './types.ts'

/** Expected points in their parts, and the exact distributions of points and pieces. */
export function reportOf(
  solved: Solved,
  adjust: number,
): Pick<PlanReport, 'expected' | 'sd' | 'p10' | 'p50' | 'p90' | 'distribution' | 'pieces'> {
  const expected = expectedOf(solved, adjust)
  const used = (leg: GraphLeg) =>
    solved.forms.some((run) =>
      leg.to < 0
        ? (run.flow.attempts[leg.id] as number) > 0
        : leg.goal >= 0 && (run.flow.pieces[leg.goal] as number) > 0,
    )
  const points = pointSpread(solved, used)
  const distribution: Spread = points.map(([amount, p]) => [Math.round((amount + adjust) * 1e9) / 1e9, p])
  const pieces: PlanReport['pieces'] = {}
  for (const [index, goal] of solved.problem.graph.goals.entries())
    pieces[goal.id] = (expected.goals[goal.id]?.pieces as number) > 0 ? pieceSpread(solved, index) : [[0, 1]]
  return {
    expected,
    sd: deviation(distribution),
    p10: percentile(distribution, 0.1),
    p50: percentile(distribution, 0.5),
    p90: percentile(distribution, 0.9),
    distribution,
    pieces,
  }
}

/** Expected points in their parts: what is quick to have of a solved option. */
export function expectedOf(solved: Solved, adjust: number): ExpectedPoints {
  const { graph, autonomous } = solved.problem
  const over = (of: (run: FormRun) => number) => solved.forms.reduce((sum, run) => sum + run.weight * of(run), 0)
  const goals: ExpectedPoints['goals'] = {}
  for (const [g, goal] of graph.goals.entries())
    goals[goal.id] = {
      pieces: over((run) => run.flow.pieces[g] as number),
      points: over((run) => run.flow.points[g] as number),
    }
  const finishes: ExpectedPoints['finishes'] = {}
  for (const leg of graph.legs) {
    if (leg.action.kind !== 'finish') continue
    const before = finishes[leg.action.finish] ?? { attempts: 0, points: 0 }
    finishes[leg.action.finish] = {
      attempts: before.attempts + over((run) => run.flow.attempts[leg.id] as number),
      points: before.points + over((run) => run.flow.finishPoints[leg.id] as number),
    }
  }
  const teleop = [...Object.values(goals), ...Object.values(finishes)].reduce((sum, { points }) => sum + points, 0)
  return { total: autonomous.expected + adjust + teleop, autonomous: autonomous.expected, adjust, goals, finishes }
}

function pointSpread(solved: Solved, used: (leg: GraphLeg) => boolean): Spread {
  return mixed(solved, (run) => pointTally(run.problem, used, begunOf(run.problem, solved.table, run.flow)))
}

function pieceSpread(solved: Solved, goal: number): Spread {
  return mixed(solved, (run) => pieceTally(run.problem, goal))
}

/** The mixture over the forms; one lattice serves all, since the amounts do not depend on the form. */
function mixed(solved: Solved, tallyOf: (run: FormRun) => Tally): Spread {
  const sum = new Map<number, number>()
  for (const run of solved.forms) {
    const tally = tallyOf(run)
    const unit = tally.lattice.unit / tally.lattice.ratio
    for (const [amount, p] of listed(spreadOf(run.problem, solved.table, tally), unit, 1e-11))
      sum.set(amount, (sum.get(amount) ?? 0) + run.weight * p)
  }
  return [...sum].filter(([, p]) => p > 5e-10).sort(([a], [b]) => a - b)
}

function deviation(spread: Spread): number {
  const total = spread.reduce((sum, [, p]) => sum + p, 0)
  const mean = spread.reduce((sum, [x, p]) => sum + x * p, 0) / total
  return Math.sqrt(spread.reduce((sum, [x, p]) => sum + p * (x - mean) ** 2, 0) / total)
}

function percentile(spread: Spread, share: number): number {
  let sum = 0
  for (const [x, p] of spread) {
    sum += p
    if (sum >= share - 1e-9) return x
  }
  return spread.at(-1)?.[0] ?? 0
}
