import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import type { EventRanking, Finding, MatchChange } from '../../src/model/event/index.ts'
import type { Assignment, Match, Result } from '../../src/model/scouting/types.ts'
import type { ResultEntry, StoredMatch, StoredResult, Undo } from '../../src/store/types.ts'
import { problemsInWords } from '../words/problems.ts'
import { client, said } from './api.ts'
import { useSession } from './session.ts'

export interface Schedule {
  matches: StoredMatch[]
  mark: string
}

export interface Watching {
  assignments: Assignment[]
  mark: string
  people: { id: string; nickname: string; role: string }[]
}

export interface SchedulePreview {
  mark: string
  findings: Finding[]
  unknownTeams: string[]
  changes: MatchChange[]
  same: number
}

export interface ResultsPreview {
  findings: Finding[]
  entries: ResultEntry[]
  fresh: number
  corrected: string[]
  same: number
}

export interface Dealt {
  assignments: Assignment[]
  mark: string
  loads: { person: string; matches: number; longest: number }[]
  broken: { person: string; match: string }[]
  empty: number
  enough: number
}

export interface Dealing {
  people: string[]
  longest: number
  rest: number
  from?: string
  keep?: boolean
}

type What = 'schedule' | 'results' | 'assignments' | 'ranking'

export const eventKey = (event: string, what: What) => ['event', event, what] as const

export const useSchedule = (event: string) =>
  useQuery({
    queryKey: eventKey(event, 'schedule'),
    queryFn: () => said(client.event.schedule.get.query({ event })) as Promise<Schedule>,
  })

export const useResults = (event: string) =>
  useQuery({
    queryKey: eventKey(event, 'results'),
    queryFn: () => said(client.event.results.get.query({ event })) as Promise<StoredResult[]>,
  })

export const useWatching = (event: string) =>
  useQuery({
    queryKey: eventKey(event, 'assignments'),
    queryFn: () => said(client.event.assignments.get.query({ event })) as Promise<Watching>,
  })

export const useRanking = (event: string, seed: number) =>
  useQuery({
    queryKey: [...eventKey(event, 'ranking'), seed],
    queryFn: () => said(client.event.ranking.query({ event, seed })) as Promise<EventRanking>,
  })

/** What a server may refuse a whole edit for, in the reader's language. */
const inWords = <Answer extends { findings: Finding[] }>(answer: Answer): Answer => ({
  ...answer,
  findings: problemsInWords(answer.findings.map((finding) => ({ ...finding, path: [] }))),
})

export const previewSchedule = async (event: string, matches: Match[], remove: string[]): Promise<SchedulePreview> =>
  inWords((await said(client.event.schedule.preview.mutate({ event, matches, remove }))) as unknown as SchedulePreview)

export const previewResults = async (event: string, results: Result[]): Promise<ResultsPreview> =>
  inWords((await said(client.event.results.preview.mutate({ event, results }))) as unknown as ResultsPreview)

export const previewAssignments = (event: string, dealing: Dealing): Promise<Dealt> =>
  said(client.event.assignments.preview.mutate({ event, ...dealing }))

/** Everything that changes an event; what the screen shows of it follows. */
export function useEventChanges(event: string) {
  const queries = useQueryClient()
  const follow = () =>
    Promise.all(
      [
        ['event', event],
        ['standsPack', event],
      ].map((queryKey) => queries.invalidateQueries({ queryKey })),
    )
  const edit = useMutation({
    mutationFn: (of: { mark: string; matches: Match[]; remove?: string[] }) =>
      said(client.event.schedule.edit.mutate({ event, ...of })) as Promise<{
        mark: string
        touched: number
        undo: Undo
      }>,
    onSettled: follow,
  })
  const enter = useMutation({
    mutationFn: (results: ResultEntry[]) =>
      said(client.event.results.enter.mutate({ event, results: results as never })) as Promise<StoredResult[]>,
    onSettled: follow,
  })
  const assign = useMutation({
    mutationFn: (of: { mark: string; assignments: Assignment[] }) =>
      said(client.event.assignments.assign.mutate({ event, ...of })),
    onSettled: follow,
  })
  return { edit, enter, assign }
}

/** Whether whoever looks may change an event. While nobody has claimed the server, everybody at its machine may. */
export const useIsLead = (): boolean => useSession().data?.role === 'lead'

/** Whether whoever looks may keep documents of the design weeks. */
export function useMayDesign(): boolean {
  const role = useSession().data?.role
  return role === 'lead' || role === 'mechanism'
}
