import { pixel } from './scale.ts'

/** A distribution as [value, probability], rising. */
export type Distribution = readonly (readonly [number, number])[]

/**
 * Values that stand for `count` equally likely outcomes: the inverse cdf at (i + ½) / count.
 * A tail of k dots is a chance of k in `count` (quantile dot plot: Kay et al., CHI 2016).
 */
export function quantileDots(distribution: Distribution, count = 20): number[] {
  const total = distribution.reduce((sum, [, probability]) => sum + probability, 0)
  const dots: number[] = []
  let index = 0
  let below = 0
  for (let dot = 0; dot < count; dot++) {
    const wanted = ((dot + 0.5) / count) * total
    // The tolerance keeps a dot on its atom where the probabilities do not add up to the last bit.
    while (index < distribution.length - 1 && below + distribution[index]![1] < wanted - 1e-12)
      below += distribution[index++]![1]
    if (distribution[index]) dots.push(distribution[index]![0])
  }
  return dots
}

export interface Dot {
  /** The value that the dot stands for. */
  value: number
  /** Where it is drawn: the middle of its column. */
  column: number
  /** Height in its column, from 0. */
  level: number
}

/**
 * Dots put into columns of equal width and stacked, lowest value first. A column ends at `edge`, so that the dots below
 * it stand left of it.
 */
export function stackDots(values: readonly number[], columnWidth: number, edge = 0): Dot[] {
  const levels = new Map<number, number>()
  return values.map((value) => {
    const index = Math.floor((value - edge) / columnWidth + 1e-9)
    const level = levels.get(index) ?? 0
    levels.set(index, level + 1)
    return { value, column: pixel(edge + (index + 0.5) * columnWidth), level }
  })
}

/** How many of the dots lie below a value. */
export const dotsBelow = (dots: readonly number[], value: number): number => dots.filter((dot) => dot < value).length
