import { useQuery } from '@tanstack/react-query'
import type { PackedRating } from '../../src/model/picks/scores/packed.ts'
import { Unreachable } from './api.ts'
import { type KeptRatings, keepRatings, keptRatings } from './picksDatabase.ts'
import { ask } from './records.ts'

type Answer = { mark: string; ratings: { [team: string]: PackedRating } | null }

/** What each team is expected to do, newest from the server, else as it was kept here. What was kept of the same records needs no asking. */
async function ratingsFrom(event: string, wanted: string): Promise<KeptRatings> {
  const before = await keptRatings(event)
  if (before?.mark === wanted) return before
  try {
    const since = before ? `?since=${before.mark}` : ''
    const { mark, ratings } = await ask<Answer>(`/api/events/${encodeURIComponent(event)}/ratings${since}`)
    if (ratings === null) return before as KeptRatings
    const fresh = { event, mark, ratings }
    await keepRatings(fresh)
    return fresh
  } catch (error) {
    if (error instanceof Unreachable && before) return before
    throw error
  }
}

/** `mark`: of what the event's pack is made from; another one asks anew, so that robots and ratings are of the same records. */
export const ratingsQuery = (event: string, mark: string) => ({
  queryKey: ['event', event, 'ratings', mark],
  queryFn: () => ratingsFrom(event, mark),
  networkMode: 'always' as const,
  structuralSharing: false,
  // Of the same records they are the same.
  staleTime: Number.POSITIVE_INFINITY,
})

export const useRatings = (event: string, mark: string | undefined) =>
  useQuery({
    ...ratingsQuery(event, mark ?? ''),
    enabled: mark !== undefined,
    placeholderData: (before: KeptRatings | undefined) => (before?.event === event ? before : undefined),
  })
