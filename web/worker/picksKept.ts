import type { EventPack } from '../../src/api/pack/contracts.ts'
import { keptPack } from '../data/packDatabase.ts'
import { type KeptRatings, keptRatings } from '../data/picksDatabase.ts'
import type { PicksEvent } from './protocol.ts'

/** An event with all its teams rated, as the worker of picks takes it. */
export const picksEventOf = ({ mark, game, event, robots }: EventPack, rated: KeptRatings): PicksEvent => ({
  key: `${mark} ${rated.mark}`,
  ...{ game, robots, level: event.level ?? null, ratings: rated.ratings },
})

/** What this browser keeps of an event; null where there is none, or where its ratings are of other records than its robots. */
export async function picksKept(event: string): Promise<PicksEvent | null> {
  const [pack, ratings] = await Promise.all([keptPack(event), keptRatings(event)])
  return pack && ratings?.mark === pack.from ? picksEventOf(pack, ratings) : null
}
