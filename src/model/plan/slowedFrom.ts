import { ModelError } from '../errors.ts'
import { solve } from './backward.ts'
import { flowOf, flowValue } from './forward.ts'
import { adjustment, type FormRun, type Solved } from './planner.ts'
import { atForm } from './problem.ts'
import { nameOf } from './pruned.ts'
import { type Policy, stop, type Table, type Values } from './table.ts'
import { evaluatePolicy } from './told.ts'
import type { Option } from './types.ts'

/**
 * Expected points of an option whose legs are as planned until some time is left, and slowed for what begins from then on,
 * where the plan is the best for slowed legs. Before, it does not know that it will be slowed.
 *
 * @param planned the option solved with its own legs
 * @param slowed the same option with slower stages, solved by the same planner
 * @param from time left (s) from which legs are slowed; null: never
 * @throws ModelError 'invalid' where the two differ in more than their times.
 */
export const slowedFrom = (option: Option, { from, ...of }: Both & { from: number | null }): number =>
  slowing(option, of)(from)

interface Both {
  planned: Solved
  slowed: Solved
}

/** The same for several times, of which the plan for slowed legs is solved once. */
export function slowing(option: Option, { planned, slowed }: Both): (from: number | null) => number {
  const { problem, table, forms } = planned
  refuseOther(planned, slowed)
  const fixed = problem.autonomous.expected + adjustment(option)
  let after: readonly Values[] | null = null
  return (from) => {
    if (from === null) return fixed + forms.reduce((sum, run) => sum + run.weight * flowValue(run.flow), 0)
    after ??= valuesAfter(planned, slowed)
    const last = Math.min(problem.steps, Math.floor(from / problem.step + 1e-9))
    const policy = cutAt(table, problem, last)
    const teleop = forms.reduce((sum, run, i) => {
      const flow = flowOf(run.problem, policy)
      return sum + run.weight * (flowValue(flow) + goingOn(run, { flow, values: after![i]!, last }))
    }, 0)
    return fixed + teleop
  }
}

/** What the best plan for slowed legs is worth at each form, on the same rooms, so that what passes by the one plan can go on by the other. */
function valuesAfter({ problem }: Solved, slowed: Solved): Values[] {
  const after = solve(atForm(problem, slowed.problem.timed))
  return slowed.forms.map(({ factor, problem: { timed } }) =>
    factor === 1 ? after : evaluatePolicy(atForm(problem, timed), after),
  )
}

/** The policy that does nothing more from `last` steps left on: who comes there is left for others. */
function cutAt(table: Table, { rooms, graph }: Solved['problem'], last: number): Policy {
  const { pad, row } = table
  const actions = graph.nodes.map((_, n) => {
    const own = table.actions[n]!.slice()
    for (let r = 0; r < rooms.size; r++) own.fill(stop, r * row + pad, r * row + pad + last + 1)
    return own
  })
  return { pad, row, actions }
}

/** Worth of all who come to a decision with `last` steps left or fewer. */
function goingOn(
  { problem }: FormRun,
  { flow, values, last }: { flow: ReturnType<typeof flowOf>; values: Values; last: number },
): number {
  const { rooms, graph } = problem
  let sum = 0
  for (let n = 0; n < graph.nodes.length; n++)
    for (let r = 0; r < rooms.size; r++)
      for (let t = 0; t <= last; t++) {
        const mass = flow.mass()[n]![r * flow.row + flow.pad + t]!
        if (mass > 0) sum += mass * values.values[n]![r * values.row + values.pad + t]!
      }
  return sum
}

function refuseOther({ problem: a, forms }: Solved, { problem: b, forms: others }: Solved): void {
  const names = (graph: typeof a.graph) => graph.legs.map((leg) => nameOf(graph, leg)).join()
  if (a.step === b.step && forms.length === others.length && names(a.graph) === names(b.graph)) return
  throw new ModelError('invalid', 'The slowed option must differ from the planned one in its times only')
}
