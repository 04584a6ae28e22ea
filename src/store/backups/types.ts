/** Why a copy was made. */
export const backupReasons = ['schedule', 'button', 'command', 'migration', 'restore'] as const

export type BackupReason = (typeof backupReasons)[number]

/** What a table holds: the hash is over its rows in the order of its key, each as JSON of its values. */
export interface TableSum {
  table: string
  rows: number
  sha256: string
}

/** Written beside each copy, from the same state of the database as the copy. */
export interface Manifest {
  version: 1
  reason: BackupReason
  /** ISO 8601. */
  madeAt: string
  bytes: number
  tables: TableSum[]
}

/** What came of opening a copy elsewhere. */
export interface Proof {
  /** ISO 8601. */
  provenAt: string
  /** Empty: all that was in the database is in the copy, and this program opens it. */
  faults: string[]
  rows: number
  milliseconds: number
}

export interface Backup {
  /** Name of its file in the folder. */
  name: string
  /** Null: of before there were manifests, or its manifest is gone. */
  manifest: Manifest | null
  madeAt: string
  bytes: number
  proof: Proof | null
}

/** Copies of the whole database, of all workspaces. */
export interface BackupStore {
  /** Where they lie. */
  readonly folder: string
  /** Newest first. */
  list(): Promise<Backup[]>
  make(reason: BackupReason): Promise<Backup>
  /** Opens a copy elsewhere and compares it with what its manifest says; null where there is no such copy. */
  prove(name: string): Promise<Backup | null>
}
