import type { Lattice } from './beats.ts'

/** Differences are kept to this many parts of a point, so that sums computed in another order fall together. */
const partsOfAPoint = 1e6

/** Points that differ by less than this are the same points, computed in another order. */
const same = 1e-9

/**
 * The distribution of own − other points, the two taken as independent (model, section 4): every pair of outcomes with
 * the product of its chances, exact. Each is taken as a whole of 1, so that the chances of the difference add up to 1.
 * Rising, in points. Agrees with `beats`: its chance above 0 and half of its chance at 0 together.
 * @example differenceOf([[0, 0.5], [1, 0.5]], [[0, 0.5], [1, 0.5]]) // [[-1, 0.25], [0, 0.5], [1, 0.25]]
 */
export function differenceOf(own: Lattice, other: Lattice): [number, number][] {
  const whole = massOf(own) * massOf(other)
  const sums = new Map<number, number>()
  for (const [points, probability] of own) {
    for (const [less, chance] of other) {
      const key = Math.round((points - less) * partsOfAPoint)
      sums.set(key, (sums.get(key) ?? 0) + (probability * chance) / whole)
    }
  }
  return [...sums].map(([key, chance]): [number, number] => [key / partsOfAPoint + 0, chance]).sort(([a], [b]) => a - b)
}

/** The chance of at least so many points in one match (0 to 1), the distribution taken as a whole of 1. */
export function chanceToReach(distribution: Lattice, points: number): number {
  const reached = distribution.filter(([value]) => value >= points - same)
  return distribution.length === 0 ? 0 : Math.min(1, massOf(reached) / massOf(distribution))
}

const massOf = (lattice: Lattice): number => lattice.reduce((sum, [, probability]) => sum + probability, 0)
