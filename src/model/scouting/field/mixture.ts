import type { Pmf } from '../../leg/pmf.ts'
import { formNodes } from '../../plan/form.ts'
import { normalQuantile } from '../statistics/index.ts'
import { fineStep } from './ways.ts'

/** Beyond this nothing is looked at (s). */
const longest = 200
const points = Math.round(longest / fineStep)

/** A form with its share among trips: a quick match holds more of them than a slow one. */
export function tripForms(spread: number): { factor: number; weight: number }[] {
  const nodes = formNodes(spread).map(({ factor, weight }) => ({ factor, weight: weight / factor }))
  const total = nodes.reduce((sum, { weight }) => sum + weight, 0)
  return nodes.map(({ factor, weight }) => ({ factor, weight: weight / total }))
}

/** A match's form by a uniform number. */
export const formAt = (spread: number, uniform: number): number =>
  spread > 1 ? Math.exp(Math.log(spread) * normalQuantile(uniform)) : 1

/** A time's distribution function, straight between grid points, and its inverse. */
export class Curve {
  /** P(at most (i + ½) steps), from i = −1. */
  private readonly below: Float64Array
  private readonly first: number

  constructor(times: Pmf) {
    this.first = times.first
    this.below = new Float64Array(times.mass.length + 1)
    for (let i = 0; i < times.mass.length; i++) this.below[i + 1] = this.below[i]! + times.mass[i]!
  }

  cdf(seconds: number): number {
    const place = seconds / fineStep - this.first + 0.5
    if (place <= 0) return 0
    if (place >= this.below.length - 1) return 1
    const at = Math.floor(place)
    return this.below[at]! + (place - at) * (this.below[at + 1]! - this.below[at]!)
  }

  quantile(p: number): number {
    let [low, high] = [0, this.below.length - 1]
    while (high - low > 1) {
      const middle = (low + high) >> 1
      if (this.below[middle]! < p) low = middle
      else high = middle
    }
    const step = this.below[high]! - this.below[low]!
    const within = step > 0 ? (p - this.below[low]!) / step : 0.5
    return Math.max(0, (low + Math.min(1, Math.max(0, within)) + this.first - 0.5) * fineStep)
  }
}

/** The same over all forms, on the grid. */
export function overForms(curve: Curve, spread: number): Float64Array {
  const forms = tripForms(spread)
  const table = new Float64Array(points + 1)
  for (let i = 0; i <= points; i++)
    for (const { factor, weight } of forms) table[i]! += weight * curve.cdf((i * fineStep) / factor)
  return table
}

/** Straight between the points of a table. */
export function readAt(table: Float64Array, seconds: number): number {
  const place = seconds / fineStep
  const at = Math.floor(place)
  if (at >= points) return table[points]!
  return table[at]! + (place - at) * (table[at + 1]! - table[at]!)
}
