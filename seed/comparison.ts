import type { CompareReport, CompareRequest } from '../src/model/compare/types.ts'
import type { ComparisonRecord } from '../src/model/documents/records.ts'
import { game } from './game.ts'
import { inputs } from './inputs.ts'
import { optionOf } from './resolve.ts'

/** The input that the answer hinges on. */
export const hinge = 'Hang success'

export const question = 'Do we build the davit hook, or leave it out and practise for the two weeks it would cost?'

const sisters = [
  { option: 'shearwater-best', design: 'shearwater' },
  { option: 'kittiwake-best', design: 'kittiwake' },
]

/** The season's open question as a request to the model. */
export const request: CompareRequest = {
  game,
  options: sisters.map(({ option }) => optionOf(option)),
  inputs,
  breakEven: hinge,
  belief: { seed: 1 },
}

export const comparisonWith = (result: CompareReport | null): ComparisonRecord => ({
  format: 1,
  id: 'hook-or-practice',
  name: 'The hook or the practice',
  question,
  game: { id: game.id, revision: 1 },
  options: sisters.map(({ option, design }) => ({
    option: { id: option, revision: 1 },
    design: { id: design, revision: 1 },
  })),
  inputs,
  breakEven: hinge,
  seed: 1,
  result,
})
