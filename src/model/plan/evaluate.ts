import type { GraphLeg } from './graph.ts'
import { finishValue, type Problem } from './problem.ts'
import { emptyTable, follow, stop, type Table, wait } from './table.ts'

/** Q of one leg begun with t steps left in room r (points). Null where the goal has no room. */
export function legValue(problem: Problem, table: Table, leg: GraphLeg, r: number, t: number): number | null {
  if (leg.to < 0) return finishValue(leg) * (problem.reached[leg.id]?.[t] as number)
  const timed = problem.timed[leg.id] as Problem['timed'][number]
  const values = table.values[leg.to] as Float64Array
  const { row, pad } = table
  const after = (room: number) => follow(values, room * row + pad, t, timed)
  if (leg.goal < 0) return after(r)
  const d = problem.rooms.dimensionOf[leg.goal] as number
  const pay = problem.legPays[leg.id]?.points as readonly Float64Array[]
  if (d < 0) return (pay[leg.load]?.[t] as number) + after(r)
  const room = problem.rooms.room(r, d)
  if (room === 0) return null
  let sum = pay[Math.min(room, leg.load)]?.[t] as number
  const successes = problem.successes[leg.id] as Float64Array
  const stride = problem.rooms.strides[d] as number
  for (let b = 0; b <= leg.load; b++) {
    const p = successes[b] as number
    if (p > 0) sum += p * after(r - Math.min(b, room) * stride)
  }
  return sum
}

/**
 * Values of a given policy under other leg times: what the plan of form 1 earns when every time is stretched.
 * `reached` restricts the work to the states that a forward pass met.
 */
export function evaluatePolicy(
  problem: Problem,
  policy: Table,
  finishFrom: number,
  reached?: (n: number, r: number, t: number) => boolean,
): Table {
  const table = { ...emptyTable(problem, false) }
  const { graph, rooms, steps } = problem
  for (let t = 0; t <= steps; t++)
    for (const [n, node] of graph.nodes.entries())
      for (let r = 0; r < rooms.size; r++) {
        if (reached && !reached(n, r, t)) continue
        const action = policy.actions[n]?.[r * policy.row + policy.pad + t] as number
        const place = r * table.row + table.pad + t
        const values = table.values[n] as Float64Array
        if (action === stop) values[place] = 0
        else if (action === wait) values[place] = values[place - t + finishFrom] as number
        else values[place] = legValue(problem, table, node.legs[action] as GraphLeg, r, t) ?? 0
      }
  return table
}
