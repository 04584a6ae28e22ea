import Dexie, { type EntityTable, type Table } from 'dexie'
import type { Receipt, Row } from '../../../src/model/scouting/types.ts'
import type { Draft, Tap } from '../record/draft.ts'
import type { Drill } from './drill.ts'
import type { KeptGame, KeptPack, Session } from './shapes.ts'

/** phone: only here. server: acknowledged, which means committed and on its disk. attention: somebody has to look at it. */
export type State = 'phone' | 'server' | 'attention'

/** A row of the outbox. It is never deleted while the event runs, whatever the server answered. */
export interface Kept {
  id: string
  event: string
  device: string
  sequence: number
  scout: string
  state: State
  row: Row
  /** What the server said of it: kept apart, or not readable. */
  outcome?: 'quarantined' | 'refused'
  why?: string
  /** ms since 1970. */
  answered?: number
}

export interface KeptTap extends Tap {
  draft: string
  /** Counts the taps of a draft. */
  order: number
}

/** Single things that the phone remembers. */
export interface Memories {
  session: Session
  /** Who was signed in last: what is recorded after a session ended is theirs. */
  person: { id: string; nickname: string }
  /** The event that is looked at. */
  event: string
  /** Nickname, where the server asks nobody to sign in. */
  nickname: string
  receipt: Receipt & { device: string }
  /** Seats that were taken over and that the server does not know of yet. */
  takeovers: { event: string; match: string; alliance: 'red' | 'blue'; position: 1 | 2 | 3 }[]
  practice: { team: string; driver: string }
  /** The rehearsal that runs; null: none, when it was asked last. */
  drill: Drill | null
}

export interface Memory {
  key: string
  value: unknown
}

export type StandsDatabase = Dexie & {
  outbox: EntityTable<Kept, 'id'>
  drafts: EntityTable<Draft, 'id'>
  taps: Table<KeptTap, [string, number]>
  packs: EntityTable<KeptPack, 'event'>
  games: Table<KeptGame, [string, number]>
  memory: EntityTable<Memory, 'key'>
}

export const databaseName = 'cyclewright-stands'

/**
 * The phone's own database. What is written is on its disk before it counts as written (`strict`), so that a killed browser
 * or an empty battery costs no tap. A change of tables is a further `version`, which carries everything over; none is ever
 * edited.
 */
export function openDatabase(name = databaseName): StandsDatabase {
  const database = new Dexie(name, { chromeTransactionDurability: 'strict' }) as StandsDatabase
  database.version(1).stores({
    outbox: 'id, event, state, [device+sequence]',
    drafts: 'id, event, step',
    taps: '[draft+order], draft',
    packs: 'event',
    games: '[id+revision]',
    memory: 'key',
  })
  return database
}

export async function remember<Key extends keyof Memories>(
  { memory }: StandsDatabase,
  key: Key,
  value: Memories[Key],
): Promise<void> {
  await memory.put({ key, value })
}

export async function recall<Key extends keyof Memories>(
  { memory }: StandsDatabase,
  key: Key,
): Promise<Memories[Key] | undefined> {
  return (await memory.get(key))?.value as Memories[Key] | undefined
}
