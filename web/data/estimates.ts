import { useQuery } from '@tanstack/react-query'
import type { TeamEstimate } from '../../src/model/scouting/estimates/types.ts'
import type { Happening, PitVisit } from '../../src/model/scouting/types.ts'
import { client, said } from './api.ts'

export interface Estimates {
  records: number
  matches: number
  teams: TeamEstimate[]
}

export interface WatchedMatch {
  match: string
  records: { id: string; scout: string; counts: boolean }[]
  timeline: Happening[]
  absent: boolean
  /** Missing: nobody said; null: none. */
  finish?: string | null
  scored: { [goal: string]: number }
  missed: number
}

export interface TeamKnown {
  estimate: TeamEstimate
  watched: WatchedMatch[]
  claims: PitVisit[]
}

export const useEstimates = (event: string) =>
  useQuery({
    queryKey: ['event', event, 'estimates'],
    queryFn: () => said(client.estimates.event.query({ event })) as unknown as Promise<Estimates>,
    // What is there stays while a new record is worked in.
    placeholderData: (before) => before,
  })

export const useTeamKnown = (event: string, team: string) =>
  useQuery({
    queryKey: ['event', event, 'estimates', team],
    queryFn: () => said(client.estimates.team.query({ event, team })) as unknown as Promise<TeamKnown>,
  })
