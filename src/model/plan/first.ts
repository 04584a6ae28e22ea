import { legValue } from './evaluate.ts'
import type { Solved } from './planner.ts'
import type { Action } from './types.ts'

/**
 * Value of every first action, rejected ones included: at teleop's start, over the forms and the outcomes of
 * autonomous, without autonomous points. An action that no outcome allows is left out; one that only some allow
 * counts as stopping where it is not allowed.
 */
export function firstActions(solved: Solved): { action: Action; value: number }[] {
  const { graph, autonomous, rooms, steps, rules } = solved.problem
  const out: { action: Action; value: number }[] = []
  for (const leg of graph.nodes[graph.initial]?.legs ?? []) {
    const allowed = leg.to < 0 ? steps <= rules.finishFrom : steps > rules.workAbove
    if (!allowed) continue
    let value = 0
    let possible = false
    for (const run of solved.forms)
      for (const outcome of autonomous.outcomes) {
        const q = legValue(run.problem, run.values(), leg, rooms.index(outcome.room), steps)
        if (q === null) continue
        possible = true
        value += run.weight * outcome.probability * q
      }
    if (possible) out.push({ action: leg.action, value })
  }
  return out
}
