import { askLive } from './client.ts'
import type { PicksAsk, PicksEvent, Questions } from './protocol.ts'

/** Asks about an event by its key: half a megabyte is handed over only where the worker has not got it already, read by itself or handed over before. */
export async function askPicks<K extends 'picksRough' | 'picksOrder'>(
  kind: K,
  { of, ask }: { of: PicksEvent; ask: PicksAsk },
): Promise<NonNullable<Questions[K]['answer']>> {
  // Of a union of kinds the compiler does not see that answer and question belong together.
  const asked = (about: PicksEvent | { key: string }) =>
    askLive('picks', kind as 'picksRough', { of: about, ask }) as Promise<Questions[K]['answer']>
  return ((await asked({ key: of.key })) ?? (await asked(of))) as NonNullable<Questions[K]['answer']>
}
