import { useMemo } from 'react'
import { type EventPack, useEventPack } from '../../../data/eventPack.ts'
import { useRatings } from '../../../data/ratings.ts'
import type { PicksEvent } from '../../../worker/protocol.ts'

export interface PicksGround {
  pack: EventPack
  /** The server could not be asked for newer ones. */
  kept: boolean
  of: PicksEvent
}

/** An event with all its teams rated, from the server or as it was kept here. */
export function usePicksEvent(id: string): { ground: PicksGround | null; error: Error | null; refetch(): void } {
  const packed = useEventPack(id)
  const ratings = useRatings(id, packed.data?.pack.from)
  const [pack, kept, rated] = [packed.data?.pack, packed.data?.kept ?? false, ratings.data]
  const ground = useMemo((): PicksGround | null => {
    if (!pack || !rated) return null
    const { game, event, robots } = pack
    const of = {
      ...{ key: `${pack.mark} ${rated.mark}`, game, robots, level: event.level ?? null },
      ratings: rated.ratings,
    }
    return { pack, kept, of }
  }, [pack, kept, rated])
  const refetch = () => void Promise.all([packed.refetch(), ratings.refetch()])
  return { ground, error: ground ? null : (packed.error ?? ratings.error), refetch }
}
