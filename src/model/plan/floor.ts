import { largestLoad } from './graph.ts'
import type { Solved } from './planner.ts'

/**
 * Per capacity goal and time left, the least room that a plan is solved for. Below it the value of that room stands in,
 * which is never too low; a plan that does not go there is exact all the same.
 */
export type Floor = readonly Int32Array[]

/** States with less probability than this are not followed: at some tens of points each, that is nothing. */
export const negligible = 1e-9

/** Decisions below the floor may make up this much probability, all forms together, before a plan is solved without it. */
export const tolerated = 1e-7

/** The floor is the largest load below what the solved plan meets within so many steps either way. */
const spare = 20

/** The floor for plans whose legs differ a little from those of a solved plan; null where it would leave nothing out. */
export function floorOf(solved: Solved): Floor | null {
  const { rooms, steps, graph } = solved.problem
  const fewest = rooms.goals.map(() => new Int32Array(steps + 1).fill(2 ** 30))
  for (let r = 0; r < rooms.size; r++) {
    const meets = meetingTimes(solved, r)
    for (const [d, few] of fewest.entries()) {
      const room = rooms.room(r, d)
      for (let t = 0; t <= steps; t++) if (meets[t] === 1 && room < (few[t] as number)) few[t] = room
    }
  }
  const floor = fewest.map((few, d) => {
    const load = largestLoad(graph, rooms.goals[d] as number)
    return leastWithin(few, spare).map((least) => Math.max(0, least - load))
  })
  return floor.some((few) => few.some((room) => room > 0)) ? floor : null
}

/** By time left, 1 where any form comes to a decision in room r. */
function meetingTimes({ forms, problem }: Solved, r: number): Uint8Array {
  const meets = new Uint8Array(problem.steps + 1)
  for (const { flow } of forms)
    for (const mass of flow.mass()) {
      const row = r * flow.row + flow.pad
      for (let t = 0; t < meets.length; t++) if ((mass[row + t] as number) > negligible) meets[t] = 1
    }
  return meets
}

/** The least of the numbers at most `reach` places away. */
function leastWithin(numbers: Int32Array, reach: number): Int32Array {
  const out = numbers.slice()
  for (let away = 1; away <= reach; away++)
    for (let i = 0; i < out.length; i++) {
      const before = numbers[Math.max(0, i - away)] as number
      const after = numbers[Math.min(out.length - 1, i + away)] as number
      out[i] = Math.min(out[i] as number, before, after)
    }
  return out
}
