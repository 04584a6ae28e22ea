import { convolve, later, type Pmf } from './pmf.ts'
import type { Recipe } from './recipe.ts'

/** Finish time of a recipe that starts at 0. */
export function evaluate(recipe: Recipe, times: readonly Pmf[]): Pmf {
  if (recipe.kind === 'stage') return times[recipe.stage] as Pmf
  const parts = recipe.parts.map((part) => evaluate(part, times))
  return parts.reduce(recipe.kind === 'series' ? convolve : later)
}
