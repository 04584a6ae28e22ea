import { useQuery } from '@tanstack/react-query'
import type { MatchReport } from '../../src/model/match/types.ts'
import type { MadeOfTeam } from '../../src/model/scouting/estimates/made.ts'
import type { TeamEstimate } from '../../src/model/scouting/estimates/types.ts'
import type { Category, SolvedTeam } from '../../src/model/scouting/solved/index.ts'
import type { Happening, PitVisit } from '../../src/model/scouting/types.ts'
import { client, said } from './api.ts'

export interface Estimates {
  records: number
  matches: number
  /** In own matches; null: all count alike. */
  halfLife: number | null
  earlier: { event: string; name: string | null; discount: number; matches: number | null; teams: number } | null
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
  /** Points that it brings, by category, solved from official totals. */
  solved: { [category in Category]?: SolvedTeam }
}

export const useEstimates = (event: string) =>
  useQuery({
    queryKey: ['event', event, 'estimates'],
    queryFn: () => said(client.estimates.event.query({ event })) as unknown as Promise<Estimates>,
    // What is there stays while a new record is worked in.
    placeholderData: (before) => before,
  })

export interface Forecast {
  match: string
  records: number
  neverSeen: string[]
  /** Ours is red, theirs is blue. */
  report: MatchReport
  /** What of it is kept; null where the match has begun. */
  kept: { id: string; madeAt: string } | null
}

export const useForecast = (event: string, match: string) =>
  useQuery({
    queryKey: ['event', event, 'estimates', 'forecast', match],
    queryFn: () => said(client.estimates.forecast.query({ event, match })) as unknown as Promise<Forecast>,
    placeholderData: (before) => (before?.match === match ? before : undefined),
  })

/** All that is known of a team, as a query that several screens share. */
export const teamKnown = (event: string, team: string) => ({
  queryKey: ['event', event, 'estimates', team],
  queryFn: () => said(client.estimates.team.query({ event, team })) as unknown as Promise<TeamKnown>,
})

export const useTeamKnown = (event: string, team: string) => useQuery(teamKnown(event, team))

/** What the numbers of a team are made of: asked for when one is opened. */
export const useMade = (event: string, team: string) =>
  useQuery({
    queryKey: ['event', event, 'estimates', 'made', team],
    queryFn: () => said(client.estimates.made.query({ event, team })) as unknown as Promise<MadeOfTeam>,
    placeholderData: (before) => before,
  })
