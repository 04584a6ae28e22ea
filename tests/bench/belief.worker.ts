import { type BeliefPart, beliefDraws } from '../../src/model/compare/index.ts'
import type { CompareRequest } from '../../src/model/compare/types.ts'

export interface Share {
  request: CompareRequest
  from: number
  to: number
}

export default ({ request, from, to }: Share): BeliefPart => beliefDraws(request, { from, to })
