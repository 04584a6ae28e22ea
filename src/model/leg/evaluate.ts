import { convolve, later, type Pmf } from './pmf.ts'
import { type Recipe, stagesOf } from './recipe.ts'

/**
 * Finish time of a recipe that starts at 0, and of what comes `after` it. In a series the parts without the drive are
 * added up first and kept: they are the same for every leg of a trip, and only the drive is another.
 */
export function evaluate(recipe: Recipe, times: readonly Pmf[], after?: Pmf): Pmf {
  if (recipe.kind !== 'series') {
    const own =
      recipe.kind === 'stage' ? times[recipe.stage]! : recipe.parts.map((part) => evaluate(part, times)).reduce(later)
    return after ? convolve(own, after) : own
  }
  const driven = recipe.parts.filter((part) => stagesOf(part).includes(0))
  const others = recipe.parts.filter((part) => !driven.includes(part)).map((part) => evaluate(part, times))
  const rest = after ? [...others, after] : others
  const parts = driven.map((part) => evaluate(part, times))
  return (rest.length > 0 ? [...parts, rest.reduce(sumOnce)] : parts).reduce(convolve)
}

const sums = new WeakMap<Pmf, WeakMap<Pmf, Pmf>>()

function sumOnce(a: Pmf, b: Pmf): Pmf {
  const known = sums.get(a) ?? new WeakMap<Pmf, Pmf>()
  sums.set(a, known)
  const sum = known.get(b) ?? convolve(a, b)
  known.set(b, sum)
  return sum
}
