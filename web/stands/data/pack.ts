import type { StandsDatabase } from './database.ts'
import { type Ask, askFor, type Failed } from './post.ts'
import { isEventList, isPack, isSame, type KeptPack, type Pack } from './shapes.ts'

const isPackOrSame = (value: unknown): value is Pack | { same: true; mark: string; serverTime: string } =>
  isSame(value) || isPack(value)

/** Brings what the phone has of an event up to date, where the server can be reached. */
export async function renewPack(
  { database, ask, now }: { database: StandsDatabase; ask: Ask; now: number },
  event: string,
): Promise<'newest' | Failed> {
  const kept = await database.packs.get(event)
  const since = kept ? `?since=${encodeURIComponent(kept.pack.mark)}` : ''
  const found = await askFor(ask, { path: `/api/stands/${encodeURIComponent(event)}${since}`, now }, isPackOrSame)
  if ('failed' in found) return found
  const { answer } = found
  // An answer is seconds old at most, so that what is more is the phone's clock. From a code it is not told.
  const ahead = now - Date.parse(answer.serverTime)
  if ('same' in answer) await database.packs.update(event, { asked: now, ahead })
  else await keepPack(database, answer, { now, ahead })
  return 'newest'
}

/** Keeps what came by whatever way: from the server, or as a code from the lead's screen. */
export async function keepPack(
  { packs, games }: StandsDatabase,
  pack: Pack,
  { now, ahead }: { now: number; ahead?: number },
): Promise<void> {
  const before = await packs.get(pack.event.id)
  const kept: KeptPack = { event: pack.event.id, pack, asked: now, ahead: ahead ?? before?.ahead ?? 0 }
  await games.put({ id: pack.event.game, ...pack.game })
  await packs.put(kept)
}

/** The events that the server has. */
export const askEvents = (ask: Ask, now: number) => askFor(ask, { path: '/api/stands', now }, isEventList)
