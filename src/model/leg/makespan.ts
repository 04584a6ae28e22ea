import { conditionedOnDrive } from './conditioned.ts'
import { type Parts, partsOf } from './evaluate.ts'
import type { Network } from './network.ts'
import { type Pmf, point } from './pmf.ts'
import { recipeOf } from './recipe.ts'
import { sampledMakespan } from './sampled.ts'

/** A way to compute the latest finish among some stages, and of what comes after, chosen once per network. */
export type Makespan = (times: readonly Pmf[], after?: Pmf) => Parts

/**
 * The distribution of the time at which the last of `stages` ends, given each stage's own distribution on one grid.
 * Exact where the order is series-parallel, or becomes so once the drive's time is known (the drive often has several
 * stages waiting for it); elsewhere from stratified draws. An empty set ends at 0.
 */
export function makespanOf(network: Network, stages: readonly number[]): Makespan {
  if (stages.length === 0) return (_times, after = point(0)) => ({ driven: after, rest: null })
  const recipe = recipeOf(network, stages)
  if (recipe) return (times, after) => partsOf(recipe, times, after)
  const other = conditionedOnDrive(network, stages) ?? ((times) => sampledMakespan(network, stages, times))
  return (times, after) => ({ driven: other(times), rest: after ?? null })
}
