import { type QueryClient, useQuery, useQueryClient } from '@tanstack/react-query'
import { useEffect, useState } from 'react'
import type { EventPack, EventPackAnswer } from '../../src/api/pack/contracts.ts'
import { Unreachable } from './api.ts'
import { keepPages } from './keepPages.ts'
import { keepPack, keptPack } from './packDatabase.ts'
import { forgetSelection } from './picksDatabase.ts'
import { ratingsQuery } from './ratings.ts'
import { ask, Refused } from './records.ts'
import { linesQuery } from './selection.ts'
import { useSession } from './session.ts'

export type { EventPack } from '../../src/api/pack/contracts.ts'

/** A pack, and whether the server said just now that it is the newest. */
export interface Packed {
  pack: EventPack
  /** True: the server could not be asked; it is what was known at `pack.madeAt`. */
  kept: boolean
  /** True: it was kept here, and the server is being asked for a newer one. */
  asking: boolean
}

export const packKey = (event: string) => ['event', event, 'pack'] as const

/** The server would not give it to whoever asks now. */
export const mayNot = (error: unknown): boolean =>
  error instanceof Refused && ['forbidden', 'unauthenticated', 'notFound'].includes(error.code)

/**
 * Asks for what is new, keeps it, and falls back on what was kept where the server can not be reached. What was kept is there
 * meanwhile, for whoever does not want to wait: where records have come in the server may work for seconds.
 *
 * @param atOnce where nothing is there yet, the server is first asked for what it has, which may lack the last records
 */
async function packOf(event: string, queries: QueryClient, atOnce: boolean): Promise<Packed> {
  let before = await keptPack(event)
  const there = queries.getQueryData<Packed>(packKey(event))
  if (before && there === undefined)
    queries.setQueryData<Packed>(packKey(event), { pack: before, kept: false, asking: true })
  const asked = async (kept: boolean): Promise<Packed> => {
    const query = new URLSearchParams({ ...(before && { since: before.mark }), ...(kept && { kept: 'true' }) })
    const answer = await ask<EventPackAnswer>(`/api/events/${encodeURIComponent(event)}/pack?${query}`)
    // `same` is only said to who sent a mark.
    const pack = 'same' in answer ? { ...before!, madeAt: answer.madeAt, behind: answer.behind } : answer
    await keepPack(event, pack)
    return { pack, kept: false, asking: false }
  }
  try {
    if (atOnce && (!there || there.asking)) {
      const first = await asked(true)
      if (!first.pack.behind) return first
      queries.setQueryData<Packed>(packKey(event), first)
      before = first.pack
    }
    return await asked(false)
  } catch (error) {
    if (error instanceof Unreachable && before) return { pack: before, kept: true, asking: false }
    // Who may not see it any more keeps no copy either.
    if (mayNot(error)) await Promise.all([keepPack(event, null), forgetSelection(event)])
    throw error
  }
}

export const packQuery = (event: string, queries: QueryClient, atOnce = false) => ({
  queryKey: packKey(event),
  queryFn: () => packOf(event, queries, atOnce),
  // The query's own pause would hide what is kept here.
  networkMode: 'always' as const,
  // What was asked for while the page was drawn for the first time is not asked for again once it stands.
  staleTime: 2000,
  // Half a megabyte: comparing it part by part is for nothing.
  structuralSharing: false,
})

/** An event's pack, at once as it was kept here, then the newest from the server; whatever is there stays while a newer one comes. */
export function useEventPackAtOnce(event: string, atOnce = false) {
  const queries = useQueryClient()
  // While it is drawn for the first time: an effect would begin a tenth of a second later.
  useState(() => void queries.prefetchQuery(packQuery(event, queries, atOnce)))
  return useQuery({
    ...packQuery(event, queries, atOnce),
    placeholderData: (before) => (before?.pack.event.id === event ? before : undefined),
  })
}

/** After so long without an answer what was kept is shown (ms): a slow network is worse than none. */
const patience = 5000

/**
 * An event's pack as the server has it, its robots perhaps without the last records; what was kept here only where the server takes
 * long to answer: what is read here must not change under the reader.
 */
export function useEventPack(event: string) {
  const packed = useEventPackAtOnce(event, true)
  const asking = packed.data?.asking === true
  const [waited, setWaited] = useState(false)
  useEffect(() => {
    if (!asking) return
    const timer = setTimeout(() => setWaited(true), patience)
    return () => clearTimeout(timer)
  }, [asking])
  return asking && (!waited || mayNot(packed.error)) ? { ...packed, data: undefined } : packed
}

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

/** The pack, and with it what a selection is worked out from. */
async function take(queries: QueryClient, event: string): Promise<void> {
  if (old(queries, event)) await queries.prefetchQuery(packQuery(event, queries))
  const packed = queries.getQueryData<Packed>(packKey(event))
  if (!packed || packed.kept) return
  await Promise.all([
    queries.prefetchQuery(ratingsQuery(event, packed.pack.from)),
    queries.prefetchQuery({ ...linesQuery(event), staleTime: atMost }),
  ])
}

/**
 * Takes an event along while any of its pages is open: not at once, since a look in passing needs none, and not for every record,
 * since working robots out costs the server seconds. These pages then open without a connection too.
 */
export function useTakeAlong(event: string): void {
  const queries = useQueryClient()
  const may = useMayPack()
  useEffect(() => {
    if (!may) return
    const ask = () => void take(queries, event)
    const first = setTimeout(() => {
      keepPages()
      ask()
    }, settled)
    const later = setInterval(ask, atMost)
    return () => {
      clearTimeout(first)
      clearInterval(later)
    }
  }, [event, may, queries])
}
