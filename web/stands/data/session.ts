import { thisDevice } from '../../data/device.ts'
import { type Memories, recall, remember, type StandsDatabase } from './database.ts'
import { type Ask, askSession, type Failed } from './post.ts'
import type { Session } from './shapes.ts'

/** Keeps who is signed in, and who was last. */
export async function keepSession(database: StandsDatabase, session: Session): Promise<void> {
  await remember(database, 'session', session)
  const { person } = session
  if (person) await remember(database, 'person', { id: person.id, nickname: person.nickname })
}

export async function renewSession(database: StandsDatabase, ask: Ask, now: number): Promise<Session | Failed> {
  const found = await askSession(ask, now)
  if ('failed' in found) return found
  await keepSession(database, found.answer)
  return found.answer
}

/** Whose records are made here: whoever is signed in, or was last; a nickname where the server asks nobody; null: not known. */
export interface Me {
  id: string
  nickname: string
}

export function meOf(
  session: Session | undefined,
  person: Memories['person'] | undefined,
  nickname: string | undefined,
): Me | null {
  if (session?.person) return session.person
  if (person && session?.claimed !== false) return person
  if (session?.claimed) return null
  return nickname ? { id: nickname, nickname } : null
}

/** What this phone is called in its records: as the server knows it, or as it calls itself. */
export async function deviceOf(database: StandsDatabase): Promise<string> {
  return (await recall(database, 'session'))?.device?.id ?? thisDevice()
}
