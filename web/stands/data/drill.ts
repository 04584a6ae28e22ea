import { recall, remember, type StandsDatabase } from './database.ts'
import { type Ask, askFor } from './post.ts'

/** A rehearsal that a lead has started: the phone shows that it can record without a network and send afterwards. */
export interface Drill {
  event: string
  id: string
}

type Answer = { drill: { id: string } | null }

const isAnswer = (value: unknown): value is Answer => {
  const { drill } = (value ?? {}) as { drill?: { id?: unknown } | null }
  return drill === null || typeof drill?.id === 'string'
}

/** Asks whether a rehearsal runs, and keeps that for when there is no network. */
export async function renewDrill(
  { database, ask, now }: { database: StandsDatabase; ask: Ask; now: number },
  event: string,
): Promise<void> {
  const found = await askFor(ask, { path: `/api/events/${encodeURIComponent(event)}/drill`, now }, isAnswer)
  if ('failed' in found) return
  const { drill } = found.answer
  const next = drill && { event, id: drill.id }
  const before = (await recall(database, 'drill')) ?? null
  if (before?.id !== next?.id) await remember(database, 'drill', next)
}

/** So long at most it is tried (ms): whoever is in flight mode gets no answer at once. */
const patience = 4_000

/** Whether the server can be reached. A browser's own word for being without a network proves nothing. */
export async function isReached(ask: Ask, now: number): Promise<boolean> {
  const init = { signal: AbortSignal.timeout(patience) }
  const is = (value: unknown): value is object => typeof value === 'object' && value !== null
  const found = await askFor(ask, { path: '/api/session', now, init }, is)
  return !('failed' in found) || found.failed !== 'noServer'
}
