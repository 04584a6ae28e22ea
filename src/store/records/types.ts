import type { Match, Receipt, Row } from '../../model/scouting/types.ts'

/** A row with the text that is kept and hashed: canonical JSON, and its SHA-256 in hexadecimal. */
export interface HashedRow {
  row: Row
  text: string
  hash: string
}

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
  rows: readonly HashedRow[]
}

/** What became of a row. apart: kept apart until a lead decides. */
export type Outcome = { outcome: 'held'; again: boolean } | { outcome: 'apart'; reason: ApartReason }

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

/** What scouts recorded, of one workspace. Records are added, never changed or deleted. */
export interface RecordStore {
  /** All of a batch in one commit that is synced to disk before this returns. Throws StorageFull when there is no room. */
  accept(batch: Batch): Promise<Accepted>
  /** Of an event, in the order in which they arrived. */
  list(event: string, options?: { after?: number; limit?: number }): Promise<StoredRecord[]>
  /** Those with these ids, in no order. */
  get(ids: readonly string[]): Promise<StoredRecord[]>
  receipt(device: string): Promise<Receipt>
  /** The matches of an event as they are now, by id. */
  schedule(event: string): Promise<Map<string, Match>>
}
