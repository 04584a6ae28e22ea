import { createContext, useContext, useMemo } from 'react'
import type { Kept, StandsDatabase } from '../data/database.ts'
import { recall } from '../data/database.ts'
import type { Sender } from '../data/sender.ts'
import { type Me, meOf } from '../data/session.ts'
import type { KeptPack, Session } from '../data/shapes.ts'
import { useLive } from './live.ts'

/** What all screens of the stands work with. */
export interface Standing {
  database: StandsDatabase
  sender: Sender
  /** Asks the server for who is signed in and for the event anew; resolves to whether it answered. */
  refresh(): Promise<boolean>
}

const context = createContext<Standing | null>(null)

export const StandingIn = context.Provider

export function useStanding(): Standing {
  const found = useContext(context)
  if (!found) throw new Error('a screen stands outside of the stands')
  return found
}

/** What the phone knows: undefined while its database is asked, null for what it does not have. */
export interface Known {
  session: Session | null
  me: Me | null
  event: string | null
  pack: KeptPack | null
  nickname: string
}

export function useKnown(): Known | undefined {
  const { database } = useStanding()
  return useLive(async () => {
    const [session, person, event, nickname] = await Promise.all([
      recall(database, 'session'),
      recall(database, 'person'),
      recall(database, 'event'),
      recall(database, 'nickname'),
    ])
    const pack = event === undefined ? undefined : await database.packs.get(event)
    return {
      session: session ?? null,
      me: meOf(session, person, nickname),
      event: event ?? null,
      pack: pack ?? null,
      nickname: nickname ?? '',
    }
  })
}

/** All rows of the outbox, the newest first. */
export function useOutbox(): Kept[] | undefined {
  const { database } = useStanding()
  const rows = useLive(() => database.outbox.toArray())
  return useMemo(() => rows && [...rows].sort((a, b) => b.row.made.localeCompare(a.row.made)), [rows])
}
