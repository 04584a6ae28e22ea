import type { Game, Option } from '../documents/types.ts'
import { LegBuilder } from '../leg/builder.ts'
import { bestPolicy, bestValue, solve } from './backward.ts'
import { expectedRooms, leaveTimes, policyBands } from './bands.ts'
import { callOf } from './call.ts'
import { firstActions } from './first.ts'
import { formNodes } from './form.ts'
import { type Flow, flowOf, flowValue, valueAlong } from './forward.ts'
import { atForm, type Problem, problemOf } from './problem.ts'
import { type LegNames, nameOf } from './pruned.ts'
import { expectedOf, reportOf } from './report.ts'
import type { Policy, Table } from './table.ts'
import { finePerStep, timedLegsOf } from './timed.ts'
import { TravelTimes } from './travelTimes.ts'
import type { ExpectedPoints, PlanOptions, PlanReport, QuickPlan } from './types.ts'
import { type TripWorth, type WorthShare, worthOf, worthShare } from './worth.ts'

/** One option solved: the policy of form 1, and what passes where at each form under it. */
export interface Solved {
  readonly problem: Problem
  readonly table: Table
  readonly forms: readonly FormRun[]
}

/** An option as it takes to value any rules: at form 1, and with every time stretched. */
export interface Framed {
  readonly problem: Problem
  readonly forms: readonly FormProblem[]
}

export interface FormProblem {
  readonly factor: number
  readonly weight: number
  readonly problem: Problem
}

export interface FormRun extends FormProblem {
  readonly flow: Flow
}

/**
 * Plans options of one game. Routes, durations and legs are kept between calls, so that an edit costs little.
 * @example new Planner(game).value(option) // expected points of the match
 */
export class Planner {
  private readonly game: Game
  private readonly step: 0.1 | 0.25
  private readonly builder: LegBuilder
  private readonly travelTimes = new TravelTimes()
  private coarse: Planner | undefined

  /**
   * @param step grid of time (s): 0.1, or 0.25 for the many plans of a belief
   * @param perStep points of the fine grid of legs per step
   */
  constructor(game: Game, step: 0.1 | 0.25 = 0.1, perStep: number = finePerStep) {
    this.game = game
    this.step = step
    // Stretched by the best of forms, twice the match is still longer than the match.
    this.builder = new LegBuilder(step / perStep, perStep, 2 * game.clock.teleop)
  }

  /**
   * Expected points of the match, autonomous and adjustments included.
   * `form: false` leaves the form factor at 1; `only` keeps to some legs, which may cost points but never adds any.
   * @throws ModelError as graphOf and travel do
   */
  value(option: Option, options: { form?: boolean; only?: LegNames } = {}): number {
    const forms = options.form === false ? [{ factor: 1, weight: 1 }] : formNodes(option.robot.form.spread)
    const problem = this.problem(option, forms, options.only)
    const fixed = problem.autonomous.expected + adjustment(option)
    if (forms.length === 1) return fixed + bestValue(problem)
    const { policy, value } = bestPolicy(problem, problem.rules)
    const along = (factor: number) => (factor === 1 ? value : valueAlong(this.atForm(problem, factor), policy).value)
    return fixed + forms.reduce((sum, { factor, weight }) => sum + weight * along(factor), 0)
  }

  /** Expected points, policy and leave-by: what an edit shows at once. */
  quick(option: Option): QuickPlan {
    const { problem, table, forms } = this.solved(option)
    const rooms = roomsExpected(forms)
    return {
      total:
        problem.autonomous.expected +
        adjustment(option) +
        forms.reduce((sum, run) => sum + run.weight * flowValue(run.flow), 0),
      policy: policyBands(problem, table, rooms),
      leaveBy: leaveTimes(problem, table, rooms),
    }
  }

  /** Expected points in their parts, without the distributions, which take most of a report's time. */
  expected(option: Option): ExpectedPoints {
    return expectedOf(this.solved(option), adjustment(option))
  }

  /** Everything the model says about an option; call and worth on request. */
  report(option: Option, options: Pick<PlanOptions, 'with'> = {}, solved: Solved = this.solved(option)): PlanReport {
    const rooms = roomsExpected(solved.forms)
    const wanted = options.with ?? []
    return {
      ...reportOf(solved, adjustment(option)),
      policy: policyBands(solved.problem, solved.table, rooms),
      leaveBy: leaveTimes(solved.problem, solved.table, rooms),
      first: firstActions(solved),
      ...(wanted.includes('call') ? { call: this.call(option, solved) } : {}),
      ...(wanted.includes('worth') ? { worth: worthOf(solved, this.builder) } : {}),
    }
  }

  /** The option solved, for the parts of the model that build on its tables. */
  solved(option: Option): Solved {
    const forms = formNodes(option.robot.form.spread)
    const problem = this.problem(option, forms)
    const table = solve(problem)
    return { problem, table, forms: this.runs(problem, table, forms) }
  }

  /** The legs that the plan of form 1 begins with a chance above 1e-9. */
  usedLegs(option: Option): Set<string> {
    const problem = this.problem(option, [{ factor: 1 }])
    const table = solve(problem)
    return begunLegs(problem, table, flowOf(problem, table))
  }

  /** Worth of the stages of some trips of a solved option. */
  worth(solved: Solved, share: WorthShare): TripWorth[] {
    return worthShare(solved, this.builder, share)
  }

  private call(option: Option, solved: Solved) {
    if (option.finish.mode === 'skip') return null
    const fixed = solved.problem.autonomous.expected + adjustment(option)
    // Where the call roughly lies is found on the grid of 0.25 s; at first among the legs that the plan begins, and all finishes.
    if (this.step !== 0.1) return callOf(this.game, { solved, coarse: solved, few: solved.problem }, fixed)
    this.coarse ??= new Planner(this.game, 0.25)
    const { graph } = solved.problem
    const only = new Set(graph.legs.filter(({ to }) => to < 0).map((leg) => nameOf(graph, leg)))
    for (const { flow } of solved.forms)
      for (const name of begunLegs(solved.problem, solved.table, flow)) only.add(name)
    const few = this.coarse.problem(option, [{ factor: 1 }], only)
    return callOf(this.game, { solved, coarse: this.coarse.framed(option), few }, fixed)
  }

  private framed(option: Option): Framed {
    const forms = formNodes(option.robot.form.spread)
    const problem = this.problem(option, forms)
    return { problem, forms: forms.map((form) => ({ ...form, problem: this.atForm(problem, form.factor) })) }
  }

  private problem(option: Option, forms: readonly { factor: number }[], only?: LegNames): Problem {
    this.builder.turn()
    const travel = this.travelTimes.for(this.game, option.robot)
    const fastest = Math.min(...forms.map(({ factor }) => factor))
    return problemOf(this.game, option, travel, this.builder, { step: this.step, fastest, only })
  }

  private atForm(problem: Problem, factor: number): Problem {
    return factor === 1 ? problem : atForm(problem, timedLegsOf(problem.graph, this.builder, factor))
  }

  private runs(problem: Problem, table: Table, forms: readonly { factor: number; weight: number }[]): FormRun[] {
    return forms.map(({ factor, weight }) => {
      const own = this.atForm(problem, factor)
      return { factor, weight, problem: own, flow: flowOf(own, table) }
    })
  }
}

/** A plan from nothing: see Planner for many of them. */
export function plan(game: Game, option: Option, options: PlanOptions = {}): PlanReport {
  return new Planner(game, options.step ?? 0.1).report(option, options)
}

/** Names of the legs that a plan begins with a chance above 1e-9. */
function begunLegs({ graph }: Problem, policy: Policy, flow: Flow): Set<string> {
  const mass = flow.mass()
  const begun = new Set<string>()
  for (const [n, { legs }] of graph.nodes.entries()) {
    const passing = mass[n] as Float64Array
    const actions = policy.actions[n] as Int16Array
    const found = new Uint8Array(legs.length)
    for (let i = 0; i < passing.length; i++)
      if ((passing[i] as number) > 1e-9 && (actions[i] as number) >= 0) found[actions[i] as number] = 1
    for (const [action, leg] of legs.entries()) if (found[action]) begun.add(nameOf(graph, leg))
  }
  return begun
}

export const adjustment = (option: Option): number => option.adjust.reduce((sum, { points }) => sum + points, 0)

/** The run whose times are not stretched says what room to expect. */
function roomsExpected(forms: readonly FormRun[]): Int32Array {
  const run = forms.find((form) => form.factor === 1) as FormRun
  return expectedRooms(run.problem, run.flow)
}
