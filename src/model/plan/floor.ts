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
    const meets = new Uint8Array(steps + 1)
    for (const { flow } of solved.forms)
      for (const mass of flow.mass()) {
        const row = r * flow.row + flow.pad
        for (let t = 0; t <= steps; t++) if ((mass[row + t] as number) > negligible) meets[t] = 1
      }
    for (const [d, few] of fewest.entries()) {
      const room = rooms.room(r, d)
      for (let t = 0; t <= steps; t++) if (meets[t] === 1 && room < (few[t] as number)) few[t] = room
    }
  }
  const floor = fewest.map((few, d) => {
    const load = largestLoad(graph, rooms.goals[d] as number)
    return few.map((_, t) => Math.max(0, Math.min(...few.subarray(Math.max(0, t - spare), t + spare + 1)) - load))
  })
  return floor.some((few) => few.some((room) => room > 0)) ? floor : null
}
