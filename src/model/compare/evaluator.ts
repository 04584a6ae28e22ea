import type { Input } from './types.ts'

/** Expected points of every option, in the options' order, with the inputs at these values, in the inputs' order. */
export type Evaluate = (values: readonly number[]) => readonly number[]

/** What is asked about: options by id, unknown numbers, and what the options are worth at given values of these. */
export interface Question {
  options: readonly string[]
  inputs: readonly Input[]
  evaluate: Evaluate
}

/** All inputs at their likely values. */
export const likelyValues = (inputs: readonly Input[]): number[] => inputs.map((input) => input.likely)

/** Place of the greatest value; the first of equals. */
export function bestOf(values: readonly number[]): number {
  let best = 0
  for (let i = 1; i < values.length; i++) if ((values[i] as number) > (values[best] as number)) best = i
  return best
}
