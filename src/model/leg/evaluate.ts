import { convolve, later, type Pmf } from './pmf.ts'
import { type Recipe, stagesOf } from './recipe.ts'

/** A time as two independent ones that are still to be added, or one alone. */
export interface Parts {
  /** What is another for every leg of a trip: the drive, and what goes on beside it. */
  readonly driven: Pmf
  /** What follows, the same for every leg of a trip. */
  readonly rest: Pmf | null
}

/**
 * Finish time of a recipe that starts at 0, and of what comes `after` it. In a series the parts without the drive are
 * added up first and kept: they are the same for every leg of a trip, and only the drive is another.
 */
export function partsOf(recipe: Recipe, times: readonly Pmf[], after: Pmf | null = null): Parts {
  if (recipe.kind !== 'series') return { driven: evaluate(recipe, times), rest: after }
  const driven = recipe.parts.find((part) => stagesOf(part).includes(0))
  const others = recipe.parts.filter((part) => part !== driven).map((part) => evaluate(part, times))
  const rest = after ? [...others, after] : others
  if (!driven) return { driven: rest.reduce(sumOnce), rest: null }
  return { driven: evaluate(driven, times), rest: rest.length > 0 ? rest.reduce(sumOnce) : null }
}

/** Finish time of a recipe that starts at 0. */
export function evaluate(recipe: Recipe, times: readonly Pmf[]): Pmf {
  if (recipe.kind === 'stage') return times[recipe.stage] as Pmf
  if (recipe.kind === 'parallel') return recipe.parts.map((part) => evaluate(part, times)).reduce(later)
  const { driven, rest } = partsOf(recipe, times)
  return rest ? convolve(driven, rest) : driven
}

const sums = new WeakMap<Pmf, WeakMap<Pmf, Pmf>>()

/** The sum of two times, made once. */
export function sumOnce(a: Pmf, b: Pmf): Pmf {
  const known = sums.get(a) ?? new WeakMap<Pmf, Pmf>()
  sums.set(a, known)
  const sum = known.get(b) ?? convolve(a, b)
  known.set(b, sum)
  return sum
}
