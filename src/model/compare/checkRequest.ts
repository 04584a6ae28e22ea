import { checkGame, checkOption } from '../documents/index.ts'
import { innerOf, refusal } from '../documents/sentences.ts'
import { ModelError, type Path } from '../errors.ts'
import { applyInputs, type Documents } from './apply.ts'
import { likelyValues } from './evaluator.ts'
import { inputBelief } from './inputBelief.ts'
import type { CompareRequest, Input } from './types.ts'

/**
 * Refuses what can not be compared: ids twice, an unknown break-even, inputs out of order, pointers that lead nowhere,
 * and inputs that at their low or high end make a document that can not be. Throws ModelError 'invalid' with the path
 * from the request's root. What holds at both ends holds between, since every field's bounds are an interval.
 */
export function checkRequest(request: CompareRequest): void {
  const inputs = request.inputs ?? []
  unique(request.options, 'options')
  unique(inputs, 'inputs')
  if (request.breakEven !== undefined && !inputs.some(({ id }) => id === request.breakEven)) {
    throw refusal('invalid', ['noSuchInput', { input: request.breakEven }], ['breakEven'])
  }
  inputs.forEach(checkInput)
  const documents: Documents = { game: request.game, options: request.options }
  checkCorner(documents, inputs, { values: likelyValues(inputs), path: ['inputs'] })
  inputs.forEach((input, index) => {
    for (const value of [input.low, input.high]) {
      const values = likelyValues(inputs).with(index, value)
      checkCorner(documents, inputs, { values, path: ['inputs', index], at: { input: input.id, value } })
    }
  })
}

function unique(items: readonly { id: string }[], list: 'options' | 'inputs'): void {
  const seen = new Set<string>()
  items.forEach(({ id }, index) => {
    if (seen.has(id)) throw refusal('invalid', ['comparedTwice', { list, id }], [list, index, 'id'])
    seen.add(id)
  })
}

function checkInput(input: Input, index: number): void {
  const path: Path = ['inputs', index]
  try {
    inputBelief(input)
  } catch (error) {
    throw error instanceof ModelError ? new ModelError(error.code, error.message, path, error.said) : error
  }
  const { perMeasurement } = input
  if (perMeasurement !== undefined && !(perMeasurement >= 0 && Number.isFinite(perMeasurement))) {
    const of = { input: input.id, value: perMeasurement }
    throw refusal('invalid', ['badMeasurement', of], [...path, 'perMeasurement'])
  }
}

function checkCorner(
  documents: Documents,
  inputs: readonly Input[],
  { values, path, at }: { values: readonly number[]; path: Path; at?: { input: string; value: number } },
): void {
  const changed = applyInputs(documents, inputs, values)
  if (changed === documents) return
  const problems = [
    ...(changed.game === documents.game ? [] : checkGame(changed.game)),
    ...changed.options.flatMap((option, index) =>
      changed.game === documents.game && option === documents.options[index] ? [] : checkOption(changed.game, option),
    ),
  ]
  const [problem] = problems
  if (!problem) return
  const why = innerOf(problem)
  throw at
    ? refusal('invalid', ['inputImpossible', { ...at, why }], path)
    : refusal('invalid', ['likelyImpossible', { why }], path)
}
