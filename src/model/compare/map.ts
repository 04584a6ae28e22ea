import { refusal } from '../documents/sentences.ts'
import { type Evaluate, likelyValues } from './evaluator.ts'
import type { Input } from './types.ts'

/** Two inputs that span a map, by id. */
export interface MapAxes {
  x: string
  y: string
}

/** A place on a map: values of its two inputs. */
export type MapPoint = readonly [x: number, y: number]

/**
 * Expected points of every option at places of a map over two inputs, the other inputs at their likely values: a row of
 * points for each place, in the places' order. `tick` is called after each, so that a map can be shown as it grows.
 * Throws ModelError 'invalid' for an input that is not there, or for the same one twice.
 */
export function mapPoints(
  { inputs, evaluate }: { inputs: readonly Input[]; evaluate: Evaluate },
  { axes, at }: { axes: MapAxes; at: readonly MapPoint[] },
  tick: () => void,
): number[][] {
  const [x, y] = [axes.x, axes.y].map((id) => {
    const index = inputs.findIndex((input) => input.id === id)
    if (index < 0) throw refusal('invalid', ['noSuchInput', { input: id }], ['axes'])
    return index
  }) as [number, number]
  if (x === y) throw refusal('invalid', ['sameAxes', { input: axes.x }], ['axes'])
  const likely = likelyValues(inputs)
  return at.map(([atX, atY]) => {
    const points = [...evaluate(likely.with(x, atX).with(y, atY))]
    tick()
    return points
  })
}
