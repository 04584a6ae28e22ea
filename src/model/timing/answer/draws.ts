import { distributionOf } from '../../duration/index.ts'
import { stratified } from '../../random/index.ts'
import type { Spread } from '../types.ts'
import { alongCurve } from './curve.ts'
import { type Place, withNumbers } from './settle.ts'

/** Few, because each is a whole motion; stratified, so that moments are far better than of as many plain draws. */
export const drawCount = 32

/** Keeps a log-normal's far ends within what the contract allows. */
const ends = 0.001

/**
 * Times over a Latin hypercube of the uncertain inputs, rising, without those in which it is impossible. Always the same
 * draws, so that a small edit changes little.
 */
export function drawTimes<Settled>(
  seconds: (drawn: Settled) => number | null,
  likely: Settled,
  places: readonly Place[],
): number[] {
  const columns = places.map(({ spread }, stream) => columnOf(spread, stream))
  const at = (...numbers: number[]) =>
    seconds(
      withNumbers(
        likely,
        places.map(({ path }, column) => [path, numbers[column]!] as const),
      ),
    )
  const smooth = columns.length === 1 ? alongCurve(at, columns[0]!) : null
  const times = smooth ?? Array.from({ length: drawCount }, (_, row) => at(...columns.map((column) => column[row]!)))
  return times.filter((time) => time !== null).sort((a, b) => a - b)
}

/** Draws of a range between 0 and 1 by its shape: inverting a beta is slow, and most edits leave the shapes as they are. */
const known = new Map<string, Float64Array>()
const mostKnown = 200

function columnOf(spread: Spread, stream: number): Float64Array {
  const uniforms = () => stratified(drawCount, 7, stream + 1).map((p) => Math.min(1 - ends, Math.max(ends, p)))
  if (spread.kind === 'lognormal') return uniforms().map(distributionOf(spread).quantile)
  const { low, likely, high } = spread
  if (low === high) return new Float64Array(drawCount).fill(low)
  const peak = (likely - low) / (high - low)
  const key = `${stream} ${peak}`
  let shape = known.get(key)
  if (!shape) {
    shape = uniforms().map(distributionOf({ kind: 'range', low: 0, likely: peak, high: 1 }).quantile)
    if (known.size >= mostKnown) known.clear()
    known.set(key, shape)
  }
  return shape.map((share) => low + share * (high - low))
}

/** Percentile of rising numbers, straight between them (type 7). */
export function percentile(rising: readonly number[], p: number): number {
  const place = p * (rising.length - 1)
  const below = Math.floor(place)
  const above = Math.min(below + 1, rising.length - 1)
  return rising[below]! + (place - below) * (rising[above]! - rising[below]!)
}
