import type { Game } from '../../documents/types.ts'
import { medianOf } from '../statistics/index.ts'
import type { Checked } from './sides.ts'
import type { Category } from './types.ts'

/** Official less scouted, by category. */
export type Off = readonly (number | null)[]

export const offOf = ({ official, scouted }: Checked): Off =>
  official.map((value, k) => (value === null || scouted[k] === null ? null : value - (scouted[k] as number)))

/** What one thing counts in a category, at least and at most: a piece, the points of a piece in autonomous, or of a finish. */
export function unitOf({ goals, finishes }: Game, { kind }: Category): { least: number; most: number } {
  const points =
    kind === 'autonomous'
      ? goals.flatMap(({ award }) => (award.kind === 'each' ? award.auto : []))
      : kind === 'finishes'
        ? finishes.map((finish) => finish.points)
        : []
  const paid = points.filter((each) => each > 0)
  return paid.length > 0 ? { least: Math.min(...paid), most: Math.max(...paid) } : { least: 1, most: 1 }
}

/**
 * Robust standard deviation of the event's differences in a category: 1.4826 times their median absolute deviation (which is
 * the standard deviation where they are normal: 1 / Φ⁻¹(¾)), at least half of what one thing counts. The median is that of grouped values,
 * a whole number n standing for all from n − ½ to n + ½: among pieces the plain one would know only 0, 1 and 2.
 *
 * Source: Hampel, Journal of the American Statistical Association 69 (1974), 383–393; median of grouped values as in textbooks
 * (from memory); the floor is this program's own.
 */
export function robustSd(offs: readonly number[], unit: number): number {
  if (offs.length === 0) return unit / 2
  const middle = medianOf(offs)
  return Math.max(unit / 2, 1.4826 * groupedMedian(offs.map((off) => Math.abs(off - middle))))
}

/** Of numbers from 0 up, those below ½ standing for 0 to ½. */
function groupedMedian(values: readonly number[]): number {
  const plain = Math.round(medianOf(values))
  const [from, to] = [Math.max(0, plain - 0.5), plain + 0.5]
  const below = values.filter((value) => value < from).length
  const within = values.filter((value) => value >= from && value < to).length
  return within === 0 ? plain : from + ((values.length / 2 - below) / within) * (to - from)
}

/** Share of sides with something badly wrong, and how many times wider those differ: stated, not estimated. */
const contaminated = { share: 0.02, wider: 6 }

/** ln of the density of differences, up to a constant: normal, a few of them far off in all categories. */
export function logDensity(off: Off, sds: readonly number[]): number {
  let squares = 0
  let known = 0
  for (const [k, value] of off.entries()) {
    if (value === null) continue
    squares += (value / (sds[k] as number)) ** 2
    known++
  }
  const { share, wider } = contaminated
  const usual = Math.log(1 - share) - squares / 2
  const wild = Math.log(share) - known * Math.log(wider) - squares / (2 * wider ** 2)
  const high = Math.max(usual, wild)
  return high + Math.log(Math.exp(usual - high) + Math.exp(wild - high))
}

export const farthest = (off: Off, sds: readonly number[]): number =>
  Math.max(0, ...off.map((value, k) => (value === null ? 0 : Math.abs(value) / (sds[k] as number))))
