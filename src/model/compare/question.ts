import type { Question } from './evaluator.ts'
import type { PlanEvaluator } from './planEvaluator.ts'
import type { CompareRequest } from './types.ts'

export type Ask = Pick<CompareRequest, 'game' | 'options' | 'inputs'>

/** Headlines, roots and swings are those of the model: a grid of 0.1 s, and form as the robots have it. */
export const headline = { step: 0.1, form: true } as const

export const ids = (request: Ask) => request.options.map(({ id }) => id)

/** The question of a request, each evaluation counted. */
export function questionOf(request: Ask, evaluator: PlanEvaluator, tick: () => void): Question {
  return {
    options: ids(request),
    inputs: request.inputs ?? [],
    evaluate: (values) => {
      tick()
      return evaluator.values(values, headline)
    },
  }
}
