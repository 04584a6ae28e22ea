import type { Pmf } from '../leg/pmf.ts'
import type { Solved } from './planner.ts'
import type { WorthLeg } from './types.ts'

/** Expected number of trips of one kind, by when they end: `ended[t]` with t steps of teleop left. */
export interface ExpectedTrips {
  leg: WorthLeg
  ended: Float64Array
}

/**
 * The trips that a plan expects, over all forms. Each ends its mean time after it begins; what would end after the buzzer
 * is counted at the buzzer, because what it moves is moved all the same.
 */
export function expectedTrips({ table, forms }: Solved): ExpectedTrips[] {
  const kinds = new Map<string, ExpectedTrips>()
  for (const { weight, flow, problem } of forms) {
    const { graph, rooms, steps, timed } = problem
    for (const [n, node] of graph.nodes.entries()) {
      const mass = flow.mass()[n]!
      const actions = table.actions[n]!
      for (let r = 0; r < rooms.size; r++)
        for (let t = 0; t <= steps; t++) {
          const passing = mass[r * flow.row + flow.pad + t]!
          const action = actions[r * table.row + table.pad + t]!
          if (passing <= 0 || action < 0) continue
          const leg = node.legs[action]!
          const ended = kindOf(kinds, leg.worth, steps).ended
          const end = Math.max(0, t - Math.round(meanOf(timed[leg.id]!.end)))
          ended[end] = ended[end]! + weight * passing
        }
    }
  }
  return [...kinds.values()]
}

function kindOf(kinds: Map<string, ExpectedTrips>, leg: WorthLeg, steps: number): ExpectedTrips {
  const key = JSON.stringify(leg)
  let kind = kinds.get(key)
  if (!kind) {
    kind = { leg, ended: new Float64Array(steps + 1) }
    kinds.set(key, kind)
  }
  return kind
}

const means = new WeakMap<Pmf, number>()

function meanOf(end: Pmf): number {
  let mean = means.get(end)
  if (mean === undefined) {
    mean = end.first + end.mass.reduce((sum, m, i) => sum + m * i, 0)
    means.set(end, mean)
  }
  return mean
}
