import { useQueries, useQuery, useQueryClient } from '@tanstack/react-query'
import type { Turn } from '../../../src/model/compare/index.ts'
import type { CompareRequest } from '../../../src/model/compare/types.ts'
import { askModel } from '../../worker/client.ts'
import { nameOf } from '../../worker/useModel.ts'

/** What is asked about an unknown: the options and all unknowns, without what else a comparison may ask. */
export type TurnRequest = Required<Pick<CompareRequest, 'game' | 'options' | 'inputs'>>

/** Its documents are long, and asked about with every drawing: they are written out once (`nameOf`). */
const hashOf = (request: TurnRequest, input: string): string => `${nameOf('turn', request)} ${input}`

const queryOf = (request: TurnRequest, input: string, { enabled = true, asked = false }) => ({
  queryKey: ['model', 'turn', { request, input }],
  queryKeyHashFn: () => hashOf(request, input),
  queryFn: ({ signal }: { signal: AbortSignal }) => askModel('turn', { request, input }, { signal, asked }),
  enabled,
  staleTime: Number.POSITIVE_INFINITY,
  retry: false,
  networkMode: 'always' as const,
})

/** So many unknowns are looked at together. Those behind them are not asked for yet, so that a stop ends it within a second. */
const together = 3

/**
 * For every unknown, whether and where it alone turns the answer; null where it is not known yet. What is known stays when
 * `enabled` is taken back.
 */
export function useTurns(request: TurnRequest, enabled: boolean): { turns: (Turn | null)[]; error: Error | null } {
  const queries = useQueryClient()
  let asked = 0
  const found = useQueries({
    queries: request.inputs.map(({ id }) => {
      const known = queries.getQueryCache().get(hashOf(request, id))?.state.data !== undefined
      if (!known) asked++
      return queryOf(request, id, { enabled: enabled && (known || asked <= together) })
    }),
  })
  return {
    turns: found.map(({ data }) => data ?? null),
    error: found.find(({ error }) => error)?.error ?? null,
  }
}

/** The same for one unknown, at once; `asked` where a person chose it and waits. */
export function useTurn(of: { request: TurnRequest; input: string; asked: boolean; enabled: boolean }): {
  turn: Turn | null
  error: Error | null
} {
  const { data, error } = useQuery(queryOf(of.request, of.input, { asked: of.asked, enabled: of.enabled }))
  return { turn: data ?? null, error }
}
