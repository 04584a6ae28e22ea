import type { DocumentKind } from '../model/documents/records.ts'
import type { BackupStore } from './backups/types.ts'
import type { EventStore } from './event/types.ts'
import type { ExchangeStore } from './exchange/types.ts'
import type { ForecastStore } from './forecasts/types.ts'
import type { JobQueue } from './jobs/queue.ts'
import type { JobStore } from './jobs/types.ts'
import type { AuditStore, EntranceStore, InvitationStore, PeopleStore } from './people/types.ts'
import type { PlanStore } from './plans/types.ts'
import type { RecordStore } from './records/types.ts'
import type { RoundStore } from './rounds/types.ts'
import type { SelectionStore } from './selection/types.ts'
import type { Signals } from './signals.ts'

export type * from './backups/types.ts'
export type * from './event/types.ts'
export type * from './exchange/types.ts'
export type * from './forecasts/types.ts'
export type { JobQueue, QueuedJob } from './jobs/queue.ts'
export type * from './jobs/types.ts'
export type * from './people/types.ts'
export type * from './plans/types.ts'
export type * from './records/types.ts'
export type * from './rounds/types.ts'
export type * from './selection/types.ts'
export type { Signals } from './signals.ts'

export interface DocumentSummary {
  kind: DocumentKind
  id: string
  name: string
  /** Newest revision, counted from 1. */
  revision: number
  /** ISO 8601. */
  savedAt: string
  removed: boolean
}

export interface StoredDocument extends DocumentSummary {
  /** The revision that `body` belongs to. */
  body: unknown
  note: string | null
}

export interface RevisionSummary {
  revision: number
  savedAt: string
  name: string
  note: string | null
}

export interface SaveRequest {
  kind: DocumentKind
  id: string
  name: string
  body: unknown
  /** The revision that the edit began from; null for a new document. */
  base: number | null
  note?: string
}

/** Either saved as a new revision, or refused because somebody saved in between: nothing is lost, the caller has all three. */
export type SaveOutcome =
  | { saved: StoredDocument }
  | { conflict: { current: StoredDocument; base: StoredDocument | null } }

export type SaveAllOutcome = { saved: StoredDocument[] } | Extract<SaveOutcome, { conflict: unknown }>

/** All documents of one workspace; a query can not forget the workspace because the object is made for one. */
export interface WorkspaceStore {
  /** Schedule, results and assignments of events. */
  readonly events: EventStore
  /** Whole events as files. */
  readonly exchange: ExchangeStore
  /** Forecasts as they were shown before their matches. */
  readonly forecasts: ForecastStore
  /** What was agreed before matches. */
  readonly plans: PlanStore
  readonly selection: SelectionStore
  /** Rounds of blind guesses. */
  readonly rounds: RoundStore
  /** Long computations and what came of them. */
  readonly jobs: JobStore
  /** What scouts recorded. */
  readonly records: RecordStore
  /** Members and their devices. */
  readonly people: PeopleStore
  readonly invitations: InvitationStore
  /** What changed data. */
  readonly audit: AuditStore
  list(kind: DocumentKind, withRemoved?: boolean): Promise<DocumentSummary[]>
  get(kind: DocumentKind, id: string, revision?: number): Promise<StoredDocument | null>
  /** Its newest revision; null where there is none. */
  newest(kind: DocumentKind, id: string): Promise<number | null>
  revisions(kind: DocumentKind, id: string): Promise<RevisionSummary[]>
  save(request: SaveRequest): Promise<SaveOutcome>
  /** All of them or, when one is refused or the power fails, none. */
  saveAll(requests: readonly SaveRequest[]): Promise<SaveAllOutcome>
  /** A copy of an older revision as the newest. Null where there is no such revision. */
  restore(kind: DocumentKind, id: string, revision: number, base: number): Promise<SaveOutcome | null>
  /** Hidden from lists, kept in the store; `undo` brings it back. False where there is no such document. */
  remove(kind: DocumentKind, id: string, undo?: boolean): Promise<boolean>
}

/** How the database promises to keep what it acknowledged; shown by `/health`. */
export interface StoreHealth {
  engine: 'sqlite' | 'postgresql'
  journalMode: string
  synchronous: string
}

/** The one open database. Everything that belongs to a team is reached through its workspace. */
export interface Store {
  /** Ways into any workspace. */
  readonly entrance: EntranceStore
  /** Copies of the whole database, made and proven here; null: by the engine's own means, elsewhere. */
  readonly backups: BackupStore | null
  /** Whether other processes may use the database at the same time: what one of them keeps in memory, another may have changed. */
  readonly shared: boolean
  /** The jobs that those processes share, opened when it is asked for; null: this one computes all that there are. */
  readonly queue: (() => Promise<JobQueue>) | null
  /** What the processes that use the database tell each other. */
  readonly signals: Signals
  workspace(id: string): WorkspaceStore
  /** Id of the workspace that holds the round of guesses with that code. */
  workspaceOfRound(code: string): Promise<string | null>
  /** Id of the workspace with that name. */
  workspaceNamed(name: string): Promise<string | null>
  /** Id of the workspace with that name, made when there is none. */
  ensureWorkspace(name: string): Promise<string>
  /** No workspace holds a document. */
  isEmpty(): Promise<boolean>
  /** Runs `work` while no process that uses the database runs any of the same name. */
  alone<Result>(name: string, work: () => Promise<Result>): Promise<Result>
  health(): Promise<StoreHealth>
  /** Throws unless the database can be read now, where it was opened. */
  answers(): Promise<void>
  close(): Promise<void>
}
