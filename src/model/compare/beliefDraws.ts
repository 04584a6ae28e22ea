import { likelyValues, type Question } from './evaluator.ts'
import { beliefSize, beliefValues } from './hypercubes.ts'

/** Grid of the many plans of a belief, and of the plans that everything else is judged by (s). */
export type Step = 0.25 | 0.1

/** A question whose values can be had on both grids, and the seed of its draws. */
export interface BeliefQuestion extends Omit<Question, 'evaluate'> {
  seed: number
  evaluate(values: readonly number[], step: Step): readonly number[]
}

/** Values of the draws from, from + 1, …: a part of a belief, which can be made anywhere and joined in any order. */
export interface BeliefPart {
  from: number
  step: Step
  /** Inputs' values and options' expected points, a draw a row. */
  inputs: number[][]
  points: number[][]
  /** Draws repeated on the grid of 0.1 s; none where all are on it. */
  repeated: { draw: number; values: number[] }[]
}

/** Every this many draws one is repeated: 50 of 2,000. */
const repeatEvery = 40

/**
 * Where an option's plans are looked at before the draws, to see which legs it begins at all: the likely values, each
 * input at its ends, and 25 draws, none of them among the repeated ones.
 */
export function pilotValues({ inputs, seed }: Pick<BeliefQuestion, 'inputs' | 'seed'>): number[][] {
  const likely = likelyValues(inputs)
  const ends = inputs.flatMap(({ low, high }, index) => [likely.with(index, low), likely.with(index, high)])
  const drawn = beliefValues(inputs, { seed, from: 0, to: beliefSize })
  return [likely, ...ends, ...drawn.filter((_, draw) => draw % (2 * repeatEvery) === repeatEvery / 2)]
}

/** Computes the draws from ≤ k < to; `tick` is called after each. */
export function drawPart(
  question: BeliefQuestion,
  part: { from: number; to: number; step?: Step },
  tick: () => void,
): BeliefPart {
  const { from, to, step = 0.25 } = part
  const inputs = beliefValues(question.inputs, { seed: question.seed, from, to })
  const isRepeated = (draw: number) => step !== 0.1 && draw % repeatEvery === 0
  const points: number[][] = []
  const repeated: BeliefPart['repeated'] = []
  inputs.forEach((values, row) => {
    points.push([...question.evaluate(values, step)])
    tick()
    if (!isRepeated(from + row)) return
    repeated.push({ draw: from + row, values: [...question.evaluate(values, 0.1)] })
    tick()
  })
  return { from, step, inputs, points, repeated }
}

/** Parts that together hold every draw once, put in order. Throws RangeError for a gap, an overlap or mixed grids. */
export function joinParts(parts: readonly BeliefPart[]): BeliefPart {
  const sorted = [...parts].sort((a, b) => a.from - b.from)
  const joined: BeliefPart = { from: 0, step: sorted[0]?.step ?? 0.25, inputs: [], points: [], repeated: [] }
  for (const part of sorted) {
    if (part.from !== joined.points.length || part.step !== joined.step) {
      throw new RangeError(`Draws from ${joined.points.length} on the grid of ${joined.step} s are missing.`)
    }
    joined.inputs = joined.inputs.concat(part.inputs)
    joined.points = joined.points.concat(part.points)
    joined.repeated = joined.repeated.concat(part.repeated)
  }
  if (joined.points.length !== beliefSize) {
    throw new RangeError(`A belief needs ${beliefSize} draws, got ${joined.points.length}.`)
  }
  return joined
}
