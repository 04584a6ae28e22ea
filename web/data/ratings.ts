import { useQuery } from '@tanstack/react-query'
import type { PackedRating } from '../../src/model/picks/scores/packed.ts'
import { Unreachable } from './api.ts'
import { type KeptRatings, keepRatings, keptRatings } from './picksDatabase.ts'
import { ask } from './records.ts'

type Answer = { mark: string; ratings: { [team: string]: PackedRating } | null }

/** What each team is expected to do, newest from the server, else as it was kept here. */
async function ratingsFrom(event: string): Promise<KeptRatings> {
  const before = await keptRatings(event)
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

/** `mark`: of the event's pack; another one asks anew, so that robots and ratings are of the same records. */
export const useRatings = (event: string, mark: string | undefined) =>
  useQuery({
    queryKey: ['event', event, 'ratings', mark],
    queryFn: () => ratingsFrom(event),
    enabled: mark !== undefined,
    networkMode: 'always',
    structuralSharing: false,
    placeholderData: (before) => before,
  })
