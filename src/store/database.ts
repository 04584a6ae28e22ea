import type { BackupStore } from './backups/types.ts'
import type { PrismaClient } from './generated/client.ts'
import type { JobQueue } from './jobs/queue.ts'
import type { TakeIn } from './records/intake.ts'
import type { Signals } from './signals.ts'
import type { StoreHealth } from './types.ts'

/** What differs between the engines, and nothing else: all that the store asks is asked of the client. */
export interface Database {
  readonly engine: StoreHealth['engine']
  /** For reading, and for what one statement writes. */
  readonly client: PrismaClient
  /**
   * The same client, whose transactions with that name run one after the other, whichever process begins them: each sees what those before it
   * wrote, so that what it read still holds when it writes.
   */
  inTurn(name: string): PrismaClient
  /** Takes batches of records in, in one commit that is synced to disk. */
  readonly takeIn: TakeIn
  /** What the processes that use the database tell each other. */
  readonly signals: Signals
  /** Whether other processes may use it at the same time. */
  readonly shared: boolean
  /** The jobs that its processes share, opened when it is asked for; null: one process has them all. */
  readonly queue: (() => Promise<JobQueue>) | null
  /** Copies of all of it, made and proven here; null: by the engine's own means, elsewhere. */
  readonly backups: BackupStore | null
  health(): Promise<StoreHealth>
  /** Throws unless it can be read now, where it was opened. */
  answers(): Promise<void>
  /** Runs `work` while no process runs any of the same name. */
  alone<Result>(name: string, work: () => Promise<Result>): Promise<Result>
  close(): Promise<void>
}

/** The name of the turn in which people, devices and invitations of all workspaces change. */
export const peopleTurn = 'people'
