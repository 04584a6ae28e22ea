import { brent } from './brent.ts'
import { bestOf, likelyValues, type Question } from './evaluator.ts'
import type { Crossing } from './types.ts'

/** Points of the scan, both ends included. */
const scanned = 33
/** Options within this many points are equally good; the one that was best before is not given up for it. */
const equal = 1e-9
/** A bracket this small a part of the range, over which the difference still changes by more than `leap`, is a jump. */
const finest = 1e-9
const leap = 1e-5

/**
 * The values of one input at which the best option changes, the other inputs being likely: a scan of 33 points from low
 * to high, then Brent's method between the neighbours whose best differ, on the difference of the two options involved.
 * Where a third option is better still at the root, each half is searched again. A crossing of which the difference
 * does not go through 0 but leaps over it is marked as a jump. None in range is an empty list.
 *
 * Two crossings between two neighbouring points of the scan, with the same best option on both, are not seen.
 */
export function crossingsOf({ options, inputs, evaluate }: Question, inputId: string): Crossing[] {
  const index = inputs.findIndex((input) => input.id === inputId)
  const input = inputs[index]
  if (!input || options.length < 2 || !(input.high > input.low)) return []
  const likely = likelyValues(inputs)
  const pointsAt = (value: number) => evaluate(likely.with(index, value))
  const range = input.high - input.low
  const crossings: Crossing[] = []

  let before: Scanned = { value: input.low, points: pointsAt(input.low) }
  let best = bestOf(before.points)
  for (let k = 1; k < scanned; k++) {
    const value = k === scanned - 1 ? input.high : input.low + (range * k) / (scanned - 1)
    const now: Scanned = { value, points: pointsAt(value) }
    best = between(before, now, best)
    before = now
  }
  return crossings

  /** Finds the crossings from `low`, where `held` is best, to `high`; answers which is best there. */
  function between(low: Scanned, high: Scanned, held: number): number {
    const next = bestOf(high.points)
    if (next === held || lead(high.points, next, held) <= equal) return held
    const difference = (value: number) => lead(pointsAt(value), next, held) - equal
    const root = brent(
      difference,
      {
        low: low.value,
        high: high.value,
        valueLow: lead(low.points, next, held) - equal,
        valueHigh: lead(high.points, next, held) - equal,
      },
      finest * range,
    )
    const points = pointsAt(root.at)
    const third = bestOf(points)
    const splits = root.at > low.value && root.at < high.value
    if (splits && lead(points, third, held) > leap && lead(points, third, next) > leap) {
      const middle: Scanned = { value: root.at, points }
      return between(middle, high, between(low, middle, held))
    }
    const jump = Math.abs(root.valueOther - root.valueAt) > leap && Math.abs(root.valueAt) > equal
    const value = jump ? (root.at + root.other) / 2 : root.at
    crossings.push({ value, from: options[held] as string, to: options[next] as string, jump })
    return next
  }
}

interface Scanned {
  value: number
  points: readonly number[]
}

const lead = (points: readonly number[], one: number, other: number): number =>
  (points[one] as number) - (points[other] as number)
