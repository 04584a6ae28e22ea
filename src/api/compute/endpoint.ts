import type { Code } from '../errors.ts'
import type { Endpoint } from '../trpc.ts'
import { may } from '../who.ts'

const errors: readonly Code[] = ['malformed', 'tooLarge', 'notJson', 'unreachable', 'busy']

/** How a computation is offered as plain HTTP. */
export function computeEndpoint(name: string, summary: string, answer: Endpoint['answer']): { endpoint: Endpoint } {
  return {
    endpoint: { method: 'POST', path: `/api/compute/${name}`, may: may.compute, audit: false, summary, answer, errors },
  }
}
