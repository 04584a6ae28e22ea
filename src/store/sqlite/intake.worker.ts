import type { Place } from '../records/add.ts'
import type { Accepted, Batch } from '../records/types.ts'
import { type Direct, type DirectTo, openDirect } from './direct.ts'
import { acceptBatch } from './intakeBatch.ts'
import { type Statements, statementsOn } from './intakeStatements.ts'
import { lettersOf } from './outcomeLetters.ts'

// Large commits are made here, by a thread of its own: while the disk is waited for, requests are read and pages answered.

export interface ToTake {
  to: DirectTo
  together: readonly { place: Place; batch: Batch }[]
}

/** An engine's error comes through without its code otherwise. */
export type Taken = { accepted: Told[] } | { failed: { message: string; code: string | null } }

/** What became of the rows as one text, a letter each: as objects they would be the larger part of the way back. */
export type Told = Omit<Accepted, 'outcomes'> & { outcomes: string }

let open: { file: string; database: Direct; statements: Statements } | undefined

function opened(to: DirectTo) {
  if (open?.file !== to.file) {
    open?.database.close()
    open = undefined
    const database = openDirect(to)
    open = { file: to.file, database, statements: statementsOn(database) }
  }
  return open
}

/** All of them in one commit that is synced to disk, or none. */
export function take({ to, together }: ToTake): Taken {
  try {
    const { database, statements } = opened(to)
    const all = () => together.map(({ place, batch }) => acceptBatch(statements, place, batch))
    const accepted = database.transaction(all).immediate()
    return { accepted: accepted.map((each) => ({ ...each, outcomes: lettersOf(each.outcomes) })) }
  } catch (error) {
    const { message, code } = error as { message: string; code?: string }
    return { failed: { message, code: code ?? null } }
  }
}

/** Moves what was committed from the log to its place, as far as nobody reads it there. */
export function tidy(to: DirectTo): void {
  opened(to).database.pragma('wal_checkpoint(PASSIVE)')
}

export function close(): void {
  open?.database.close()
  open = undefined
}
