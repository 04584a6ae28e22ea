import { legValue } from './evaluate.ts'
import type { GraphLeg } from './graph.ts'
import type { FormRun, Solved } from './planner.ts'
import type { Values } from './table.ts'
import { withValuesAhead } from './told.ts'
import type { Action } from './types.ts'

/**
 * Value of every first action, rejected ones included: at teleop's start, over the forms and the outcomes of
 * autonomous, without autonomous points. An action that no outcome allows is left out; one that only some allow
 * counts as stopping where it is not allowed.
 */
export function firstActions(solved: Solved): { action: Action; value: number }[] {
  const { graph, steps, rules } = solved.problem
  const legs = (graph.nodes[graph.initial]?.legs ?? []).filter((leg) =>
    leg.to < 0 ? steps <= rules.finishFrom : steps > rules.workAbove,
  )
  const byForm = solved.forms.map((run) => {
    const valued = (table: Values) => legs.map((leg) => shareOf(run, table, leg))
    return run.factor === 1 ? valued(solved.table) : withValuesAhead(run.problem, solved.table, valued)
  })
  return legs.flatMap(({ action }, i) => {
    const values = byForm.map((of) => of[i]).filter((value) => value !== null)
    return values.length > 0 ? { action, value: values.reduce((sum, value) => sum + value, 0) } : []
  })
}

/** Share of one form in the value of a first action; null where no outcome of autonomous allows it. */
function shareOf({ problem, weight }: FormRun, table: Values, leg: GraphLeg): number | null {
  const { autonomous, rooms, steps } = problem
  let value: number | null = null
  for (const outcome of autonomous.outcomes) {
    const q = legValue(problem, table, leg, rooms.index(outcome.room), steps)
    if (q !== null) value = (value ?? 0) + weight * outcome.probability * q
  }
  return value
}
