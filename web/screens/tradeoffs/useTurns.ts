import { useQueries, useQuery } from '@tanstack/react-query'
import type { Turn } from '../../../src/model/compare/index.ts'
import type { CompareRequest } from '../../../src/model/compare/types.ts'
import { askModel } from '../../worker/client.ts'

/** What is asked about an unknown: the options and all unknowns, without what else a comparison may ask. */
export type TurnRequest = Required<Pick<CompareRequest, 'game' | 'options' | 'inputs'>>

const queryOf = (request: TurnRequest, input: string, enabled: boolean) => ({
  queryKey: ['model', 'turn', { request, input }],
  queryFn: ({ signal }: { signal: AbortSignal }) => askModel('turn', { request, input }, { signal }),
  enabled,
  staleTime: Number.POSITIVE_INFINITY,
  retry: false,
  networkMode: 'always' as const,
})

/** For every unknown, whether and where it alone turns the answer; null where it is not known yet. */
export function useTurns(request: TurnRequest, enabled: boolean): { turns: (Turn | null)[]; error: Error | null } {
  const found = useQueries({ queries: request.inputs.map(({ id }) => queryOf(request, id, enabled)) })
  return {
    turns: found.map(({ data }) => data ?? null),
    error: found.find(({ error }) => error)?.error ?? null,
  }
}

/** The same for one unknown, whose answer is asked for at once. */
export function useTurn(request: TurnRequest, input: string): { turn: Turn | null; error: Error | null } {
  const { data, error } = useQuery(queryOf(request, input, true))
  return { turn: data ?? null, error }
}
