import type { CompareRequest } from '../../model/compare/types.ts'
import { checkGame, checkOption, within } from '../../model/documents/index.ts'
import type { Problem } from '../../model/errors.ts'

function twice(ids: readonly string[], at: { list: string; noun: string }): Problem[] {
  const index = ids.findIndex((id, place) => ids.indexOf(id) < place)
  if (index < 0) return []
  return [{ path: [at.list, index, 'id'], message: `There are two ${at.noun} with the id “${ids[index]}”` }]
}

function checkBreakEven({ inputs, breakEven, options }: CompareRequest): Problem[] {
  if (breakEven === undefined) return []
  if (!(inputs ?? []).some(({ id }) => id === breakEven)) {
    return [{ path: ['breakEven'], message: `There is no input with the id “${breakEven}”` }]
  }
  if (options.length > 1) return []
  return [{ path: ['options'], message: 'A break-even is between options, so at least two are needed, got 1' }]
}

/** The game, every option, and what the comparison itself can get wrong. Paths begin in the request. */
export function checkCompare(request: CompareRequest): Problem[] {
  const { game, options, inputs = [] } = request
  return [
    ...within(['game'], checkGame(game)),
    ...options.flatMap((option, index) => within(['options', index], checkOption(game, option))),
    ...twice(
      options.map(({ id }) => id),
      { list: 'options', noun: 'options' },
    ),
    ...twice(
      inputs.map(({ id }) => id),
      { list: 'inputs', noun: 'inputs' },
    ),
    ...checkBreakEven(request),
  ]
}
