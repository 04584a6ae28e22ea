import type { GraphLeg } from './graph.ts'
import { finishValue, type Problem, reachedIn } from './problem.ts'
import { follow, type Values } from './table.ts'

/** Q of one leg begun with t steps left in room r (points). Null where the goal has no room. */
export function legValue(problem: Problem, table: Values, leg: GraphLeg, r: number, t: number): number | null {
  if (leg.to < 0) return finishValue(leg) * (reachedIn(problem, leg.id)[t] as number)
  const timed = problem.timed[leg.id] as Problem['timed'][number]
  const values = table.values[leg.to] as Float64Array
  const { row, pad } = table
  if (leg.goal < 0) return follow(values, r * row + pad, t, timed)
  const d = problem.rooms.dimensionOf[leg.goal] as number
  const pay = problem.legPays[leg.id]?.points as readonly Float64Array[]
  if (d < 0) return (pay[leg.load]?.[t] as number) + follow(values, r * row + pad, t, timed)
  const room = problem.rooms.room(r, d)
  if (room === 0) return null
  let sum = pay[Math.min(room, leg.load)]?.[t] as number
  const successes = problem.successes[leg.id] as Float64Array
  const stride = problem.rooms.strides[d] as number
  for (let b = 0; b <= leg.load; b++) {
    const p = successes[b] as number
    if (p > 0) sum += p * follow(values, (r - Math.min(b, room) * stride) * row + pad, t, timed)
  }
  return sum
}
