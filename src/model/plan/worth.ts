import { distributionOf } from '../duration/index.ts'
import type { LegBuilder } from '../leg/builder.ts'
import { legValue } from './evaluate.ts'
import type { GraphLeg } from './graph.ts'
import type { FormRun, Solved } from './planner.ts'
import { type Problem, withTimes } from './problem.ts'
import { timedLeg } from './timed.ts'
import type { Worth } from './types.ts'

/** By how much a stage is moved either way (s), or half its mean if that is less. */
const most = 0.5

/** States met more rarely than this do not move a worth that is shown to 0.01 points. */
const rare = 1e-7

/**
 * What a second of each stage is worth: [V(stage − δ) − V(stage + δ)] / 2δ, every draw of the stage moved by δ in all
 * legs and loads of its trip at once. By the envelope theorem the change of the plan's value is, to first order, the
 * change of the moved legs' own values where the plan begins them: one forward pass serves all stages.
 */
export function worthOf(solved: Solved, builder: LegBuilder): Worth[] {
  const groups = new Map<string, GraphLeg[]>()
  for (const leg of solved.problem.graph.legs) {
    const key = JSON.stringify(leg.worth)
    groups.set(key, [...(groups.get(key) ?? []), leg])
  }
  const out: Worth[] = []
  for (const legs of groups.values()) {
    const { spec, worth } = legs[0] as GraphLeg
    if (!('stages' in spec.trip)) continue
    for (const stage of spec.trip.stages) {
      const delta = Math.min(most, distributionOf(stage.duration).mean / 2)
      const pointsPerSecond = delta > 0 ? worthOfStage(solved, builder, legs, stage.id, delta) : 0
      out.push({ leg: worth, stage: stage.id, pointsPerSecond })
    }
  }
  return out
}

function worthOfStage(
  solved: Solved,
  builder: LegBuilder,
  legs: readonly GraphLeg[],
  stage: string,
  delta: number,
): number {
  let sum = 0
  for (const run of solved.forms) {
    const used = legs.filter((leg) => run.problem.timed[leg.id])
    const moved = (seconds: number): Problem => {
      const timed = [...run.problem.timed]
      for (const leg of used) timed[leg.id] = timedLeg(leg, builder, run.factor, { stage, seconds })
      return withTimes(run.problem, timed)
    }
    sum += run.weight * difference(solved, run, moved(-delta), moved(delta), new Set(used.map((leg) => leg.id)))
  }
  return sum / (2 * delta)
}

function difference(solved: Solved, run: FormRun, faster: Problem, slower: Problem, legs: ReadonlySet<number>): number {
  const { graph, rooms, steps } = run.problem
  const values = run.values()
  let sum = 0
  for (const [n, node] of graph.nodes.entries())
    for (let r = 0; r < rooms.size; r++) {
      const start = r * run.flow.row + run.flow.pad
      for (let t = 1; t <= steps; t++) {
        const mass = run.flow.mass[n]?.[start + t] as number
        if (mass < rare) continue
        const action = solved.table.actions[n]?.[start + t] as number
        const leg = action < 0 ? undefined : node.legs[action]
        if (!leg || !legs.has(leg.id)) continue
        sum += mass * ((legValue(faster, values, leg, r, t) ?? 0) - (legValue(slower, values, leg, r, t) ?? 0))
      }
    }
  return sum
}
