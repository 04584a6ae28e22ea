import { type QueryClient, useQuery, useQueryClient } from '@tanstack/react-query'
import { useEffect } from 'react'
import type { EventPack, EventPackAnswer } from '../../src/api/pack/contracts.ts'
import { Unreachable } from './api.ts'
import { keepPack, keptPack } from './packDatabase.ts'
import { ask, Refused } from './records.ts'
import { useSession } from './session.ts'

export type { EventPack } from '../../src/api/pack/contracts.ts'

/** A pack, and whether the server said just now that it is the newest. */
export interface Packed {
  pack: EventPack
  /** True: the server could not be asked; it is what was known at `pack.madeAt`. */
  kept: boolean
}

export const packKey = (event: string) => ['event', event, 'pack'] as const

/** Asks for what is new, keeps it, and falls back on what was kept where the server can not be reached. */
async function packOf(event: string): Promise<Packed> {
  const before = await keptPack(event)
  const since = before ? `?since=${before.mark}` : ''
  let answer: EventPackAnswer
  try {
    answer = await ask<EventPackAnswer>(`/api/events/${encodeURIComponent(event)}/pack${since}`)
  } catch (error) {
    if (error instanceof Unreachable && before) return { pack: before, kept: true }
    // Who may not see it any more keeps no copy either.
    if (error instanceof Refused && ['forbidden', 'unauthenticated', 'notFound'].includes(error.code))
      await keepPack(event, null)
    throw error
  }
  // `same` is only said to who sent a mark.
  const pack = 'same' in answer ? { ...before!, madeAt: answer.madeAt } : answer
  await keepPack(event, pack)
  return { pack, kept: false }
}

const query = (event: string) => ({
  queryKey: packKey(event),
  queryFn: () => packOf(event),
  // The query's own pause would hide what is kept here.
  networkMode: 'always' as const,
  // Half a megabyte: comparing it part by part is for nothing.
  structuralSharing: false,
})

/** An event's pack, newest first from the server; whatever is there stays while a newer one comes. */
export const useEventPack = (event: string) =>
  useQuery({
    ...query(event),
    placeholderData: (before) => (before?.pack.event.id === event ? before : undefined),
  })

/** Whether whoever looks may take packs along. */
export function useMayPack(): boolean {
  const role = useSession().data?.role
  return role === 'lead' || role === 'driveTeam' || role === 'mechanism'
}

/** After so long on an event's pages its pack is asked for, and from then on at most so often (ms). */
const [settled, atMost] = [15_000, 60_000]

const old = (queries: QueryClient, event: string) => {
  const state = queries.getQueryState(packKey(event))
  return !state || state.isInvalidated || state.data === undefined
}

/**
 * Takes an event along while any of its pages is open: not at once, since a look in passing needs none, and not for every record,
 * since working robots out costs the server seconds.
 */
export function useTakeAlong(event: string): void {
  const queries = useQueryClient()
  const may = useMayPack()
  useEffect(() => {
    if (!may) return
    const ask = () => {
      if (old(queries, event)) void queries.prefetchQuery(query(event))
    }
    const first = setTimeout(ask, settled)
    const later = setInterval(ask, atMost)
    return () => {
      clearTimeout(first)
      clearInterval(later)
    }
  }, [event, may, queries])
}
