import { crossingsOf } from './crossings.ts'
import { bestOf, type Evaluate, likelyValues, type Question } from './evaluator.ts'
import type { Crossing } from './types.ts'

/** What one input does to the answer over its whole believed range, the others at their likely values. */
export interface Turn {
  input: string
  /** Where the best option changes; none where this input alone never changes it. */
  crossings: Crossing[]
  /** The best option at the input's low value. */
  bestAtLow: string
  /** Least lead of the best option over the next at the values looked at first (points); 0 for fewer than two options. */
  leastLead: number
}

/** Points of the first look, both ends included. */
const looked = 17

/** A lead above this (points) is safe from the coarse grid of the first look, which moves leads by less than 0.05. */
const safe = 0.25

/**
 * Whether and where one input alone changes the best option. A first look on a coarse grid of time settles most inputs:
 * where the same option leads by more than a quarter of a point at each of 17 values, nothing turns. Otherwise the
 * crossings are those of `crossingsOf`, on the fine grid.
 * @param coarse expected points on the coarse grid
 */
export function turnOf(question: Question, inputId: string, coarse: Evaluate): Turn {
  const { options, inputs } = question
  const index = inputs.findIndex(({ id }) => id === inputId)
  const input = inputs[index]
  if (!input) throw new RangeError(`There is no input '${inputId}'.`)
  const likely = likelyValues(inputs)
  const rows = Array.from({ length: looked }, (_, k) =>
    coarse(likely.with(index, input.low + ((input.high - input.low) * k) / (looked - 1))),
  )
  const bests = rows.map(bestOf)
  const leastLead = Math.min(...rows.map((row, k) => leadOf(row, bests[k]!)))
  const settled = leastLead > safe && bests.every((best) => best === bests[0])
  const crossings = settled ? [] : crossingsOf(question, inputId)
  return { input: inputId, crossings, bestAtLow: crossings[0]?.from ?? options[bests[0]!]!, leastLead }
}

function leadOf(points: readonly number[], best: number): number {
  const others = points.filter((_, option) => option !== best)
  return others.length === 0 ? 0 : points[best]! - Math.max(...others)
}
