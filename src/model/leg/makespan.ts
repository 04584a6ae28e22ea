import { conditionedOnDrive } from './conditioned.ts'
import { evaluate } from './evaluate.ts'
import type { Network } from './network.ts'
import { convolve, type Pmf, point } from './pmf.ts'
import { recipeOf } from './recipe.ts'
import { sampledMakespan } from './sampled.ts'

/** A way to compute the latest finish among some stages, and of what comes after, chosen once per network. */
export type Makespan = (times: readonly Pmf[], after?: Pmf) => Pmf

/**
 * The distribution of the time at which the last of `stages` ends, given each stage's own distribution on one grid.
 * Exact where the order is series-parallel, or becomes so once the drive's time is known (the drive often has several
 * stages waiting for it); elsewhere from stratified draws. An empty set ends at 0.
 */
export function makespanOf(network: Network, stages: readonly number[]): Makespan {
  if (stages.length === 0) return (_times, after = point(0)) => after
  const recipe = recipeOf(network, stages)
  if (recipe) return (times, after) => evaluate(recipe, times, after)
  const other: Makespan = conditionedOnDrive(network, stages) ?? ((times) => sampledMakespan(network, stages, times))
  return (times, after) => (after ? convolve(other(times), after) : other(times))
}
