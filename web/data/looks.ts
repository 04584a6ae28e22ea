import { useQuery } from '@tanstack/react-query'
import type { Assignment } from '../../src/model/scouting/types.ts'
import { client, said } from './api.ts'

export interface Looks {
  decision: { seed: number; alliances: number; replacement: string | null }
  teams: { team: string; mean: number; sd: number; worth: number; matches: number; next: string | null }[]
  looks: { match: string; team: string; person: string; worth: number }[]
  assignments: Assignment[]
  mark: string
  coming: number
  unwatched: number
}

export interface LooksAsked {
  team: string
  people?: string[]
  longest?: number
  rest?: number
}

export const askLooks = (event: string, asked: LooksAsked): Promise<Looks> =>
  said(client.looks.where.mutate({ event, ...asked })) as unknown as Promise<Looks>

/** Asked for anew with the estimates; what is there stays meanwhile. */
export const useLooks = (event: string, team: string | null, mark: string) =>
  useQuery({
    queryKey: ['event', event, 'estimates', 'looks', team, mark],
    queryFn: () => askLooks(event, { team: team! }),
    enabled: team !== null,
    placeholderData: (before) => before,
  })
