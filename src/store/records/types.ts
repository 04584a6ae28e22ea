import type { Cells, HashedRow, PackedRows } from '../../model/scouting/cells.ts'
import type { Match, Receipt, RecordKind, Row } from '../../model/scouting/types.ts'

export type { Cells, HashedRow }

/** Rows whose texts are UTF-8 in memory that goes from thread to thread without a copy. */
export type SharedRows = PackedRows<Uint8Array<SharedArrayBuffer>>

/** What a device hands in at once. */
export interface Batch {
  /** The device that hands it in; its rows may come from others. */
  device: string
  /** Who is signed in there. */
  person: string | null
  /** The device that is signed in, whose state is noted; null where nobody is. */
  session: string | null
  /** Rows that the device holds besides these, not acknowledged yet. */
  unsent: number
  /** Version of the program that runs there. */
  app?: string | undefined
  rows: readonly Cells[] | SharedRows
}

/** What became of a row. apart: kept apart until a lead decides; missing: it came without its body, and is not held. */
export type Outcome =
  | { outcome: 'held'; again: boolean }
  | { outcome: 'apart'; reason: ApartReason }
  | { outcome: 'missing' }

/** Why a row is kept apart: its id is taken by other content, or this workspace has no such event. */
export type ApartReason = 'otherContent' | 'unknownEvent'

export interface Accepted {
  /** In the order of the rows. */
  outcomes: Outcome[]
  receipt: Receipt
  /** Events of which something new came in. */
  fresh: string[]
  /** Events of which something new was kept apart. */
  apart: string[]
}

export interface StoredRecord {
  /** Counts up with each record that arrives; gaps mean nothing. */
  arrival: number
  /** ISO 8601, by the server's clock. */
  receivedAt: string
  row: Row
  hash: string
  /** Id of the record that this one takes the place of. */
  replaces: string | null
  /** Who handed it in. */
  person: string | null
}

/** A row that was kept apart, and what became of it. */
export interface ApartRecord {
  /** Names it. */
  arrival: number
  receivedAt: string
  row: Row
  hash: string
  reason: ApartReason
  /** Who handed it in. */
  person: string | null
  resolution: Resolution | null
  resolvedAt: string | null
  resolvedBy: string | null
}

/** kept: what was there first stays; replaced: this one takes its place; setAside: neither was right, or it does not matter. */
export type Resolution = 'kept' | 'replaced' | 'setAside'

/** Of a lead. `before` null: the first one over this row. */
export interface Decision {
  before: Resolution | null
  resolution: Resolution
  person: string | null
  adds?: { hashed: HashedRow; replaces: string | null } | undefined
}

/** Which of several records of a robot counts; the newest of a robot in a match is in force. */
export interface Choice {
  match: string
  team: string
  /** Null: all again. */
  record: string | null
  person: string | null
  reason: string | null
  /** ISO 8601. */
  chosenAt: string
}

export interface StoredDrill {
  id: string
  /** ISO 8601. */
  startedAt: string
  endedAt: string | null
  startedBy: string | null
}

/** A record that takes the place of another one. */
export interface Successor {
  hashed: HashedRow
  replaces: string
}

/** All that an event holds. */
export interface EventLog {
  /** Arrival of the newest record; 0: there is none. */
  newest: number
  /** The same one however many more come in, as long as the log is kept: what is worked out from it can be kept by this. */
  of: object
  /** In the order in which they arrived, without photos. */
  records: readonly StoredRecord[]
  /** How many records came from each device, photos included. */
  held: ReadonlyMap<string, number>
}

/** Part of an event's records. */
export interface Wanted {
  /** Arrival after which they came. */
  after?: number | undefined
  limit?: number | undefined
  /** All where nothing is said. */
  kinds?: readonly RecordKind[] | undefined
}

/** What scouts recorded, of one workspace. Records are added, never changed or deleted. */
export interface RecordStore {
  /** All of a batch in one commit that is synced to disk before this returns. Throws StorageFull when there is no room. */
  accept(batch: Batch): Promise<Accepted>
  /** Of an event, in the order in which they arrived. */
  list(event: string, wanted?: Wanted): Promise<StoredRecord[]>
  /** All of an event but its photos, of which only what is new is read. Nobody may change what is returned. */
  log(event: string): Promise<EventLog>
  /** The log as it was when it was asked for last, without asking; null where it is not kept. */
  logKept(event: string): EventLog | null
  /** How many records of an event came after this arrival. */
  since(event: string, arrival: number): Promise<number>
  /** Those with these ids, in no order. */
  get(ids: readonly string[]): Promise<StoredRecord[]>
  /** The record with this id and what took its place, one after the other; where two took the same place, the later one. */
  chain(id: string): Promise<StoredRecord[]>
  receipt(device: string): Promise<Receipt>
  /** The matches of an event as they are now, by id. */
  schedule(event: string): Promise<Map<string, Match>>

  /** Corrections, all or none. `stale`: somebody has replaced one of them in between, or it is not there. */
  replace(successors: readonly Successor[], person: string | null): Promise<{ done: true } | { stale: string }>
  /** What is kept apart of an event and of events that are not known, oldest first. */
  apart(event: string): Promise<ApartRecord[]>
  /** How many of those nobody has decided over. */
  waiting(event: string): Promise<number>
  /**
   * Decides over a row that was kept apart, of which `before` was decided, and adds what follows. False: somebody has decided
   * otherwise in between, or something has taken the place of what is to be replaced.
   */
  resolve(arrival: number, as: Decision): Promise<boolean>
  /** Oldest first. */
  choices(event: string): Promise<Choice[]>
  choose(event: string, choice: Omit<Choice, 'chosenAt'>): Promise<void>
  /** Newest first. */
  drills(event: string): Promise<StoredDrill[]>
  /** The one that runs, or a new one. */
  startDrill(event: string, person: string | null): Promise<StoredDrill>
  /** Null where there is none. */
  endDrill(event: string, id: string): Promise<StoredDrill | null>
}
