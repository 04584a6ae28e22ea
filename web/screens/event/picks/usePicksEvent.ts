import { useQueryClient } from '@tanstack/react-query'
import { useMemo, useRef, useState } from 'react'
import { type EventPack, mayNot, useEventPackAtOnce, useTakeAlong } from '../../../data/eventPack.ts'
import { openPicks } from '../../../data/openPicks.ts'
import { useRatings } from '../../../data/ratings.ts'
import { readyPicks } from '../../../worker/client.ts'
import { picksEventOf } from '../../../worker/picksKept.ts'
import type { PicksEvent } from '../../../worker/protocol.ts'

export interface PicksGround {
  pack: EventPack
  /** The server could not be asked for newer ones. */
  kept: boolean
  /** It is being asked. */
  asking: boolean
  of: PicksEvent
}

/** An event with all its teams rated: at once as it was kept here, then from the server. */
export function usePicksEvent(id: string): { ground: PicksGround | null; error: Error | null; refetch(): void } {
  const queries = useQueryClient()
  useState(() => {
    readyPicks(id)
    openPicks(queries, id)
  })
  useTakeAlong(id)
  const packed = useEventPackAtOnce(id)
  const ratings = useRatings(id, packed.data?.pack.from)
  const [pack, kept, asking] = [packed.data?.pack, packed.data?.kept ?? false, packed.data?.asking ?? false]
  // Those of other records stand only until these are here.
  const rated = ratings.isPlaceholderData ? undefined : ratings.data
  const made = useMemo((): Pick<PicksGround, 'pack' | 'of'> | null => {
    if (!pack || !rated) return null
    return { pack, of: picksEventOf(pack, rated) }
  }, [pack, rated])
  const last = useRef<typeof made>(null)
  if (made) last.current = made
  const shown = made ?? (last.current?.pack.event.id === id ? last.current : null)
  const error = packed.error ?? ratings.error
  const ground = shown && !mayNot(error) ? { ...shown, kept, asking } : null
  const refetch = () => void Promise.all([packed.refetch(), ratings.refetch()])
  return { ground, error: ground ? null : error, refetch }
}
