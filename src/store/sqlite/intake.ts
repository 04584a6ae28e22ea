import { textIn } from '../../model/scouting/cells.ts'
import { ThreadDied } from '../../threads.ts'
import { rowsOf, sizeOf } from '../records/batch.ts'
import type { TakeIn } from '../records/intake.ts'
import type { Batch } from '../records/types.ts'
import type { DirectConnection } from './direct.ts'
import { acceptBatch } from './intakeBatch.ts'
import { type Statements, statementsOn } from './intakeStatements.ts'
import { IntakeThread } from './intakeThread.ts'

/** From so many rows on, a commit is made by a thread: for fewer, the way there and back would take longer. */
const large = 30

/** Nobody waits longer than this for a small commit that is made here (ms): the server answers nothing meanwhile. */
const slowest = 8

/** After so many small ones in the thread, whose disk is slow, one is tried here again. */
const patience = 200

/** Batch after batch within one transaction, row after row: here a statement costs no way to a server and back. */
export function takeInOn(connection: DirectConnection): { takeIn: TakeIn; close(): Promise<void> } {
  const thread = new IntakeThread(connection)
  let statements: { of: object; are: Statements } | undefined
  /** Small commits that the thread makes yet, because the disk took long over the last one that was made here. */
  let elsewhere = 0
  const here: TakeIn = async (together) => {
    let begun = 0
    const accepted = await connection.together((database) => {
      if (statements?.of !== database) statements = { of: database, are: statementsOn(database) }
      const { are } = statements
      begun = performance.now()
      return together.map(({ place, batch }) => acceptBatch(are, place, batch))
    })
    if (performance.now() - begun > slowest) elsewhere = patience
    return accepted
  }
  const byThread: TakeIn = async (together) => {
    try {
      return await thread.take(together)
    } catch (error) {
      if (!(error instanceof ThreadDied)) throw error
    }
    const accepted = await here(together)
    return accepted.map((each, index) => ({ ...each, fresh: eventsOf(together[index]!.batch) }))
  }
  const takeIn: TakeIn = (together) => {
    const rows = together.reduce((sum, { batch }) => sum + sizeOf(batch), 0)
    if (rows >= large) return byThread(together)
    if (elsewhere === 0) return here(together)
    elsewhere -= 1
    return byThread(together)
  }
  return { takeIn, close: () => thread.close() }
}

/** Where a thread died it may have committed: what is held again then is new to everybody else. */
const eventsOf = (batch: Batch): string[] => [...new Set(rowsOf(batch).map((cells) => textIn(cells, 'event')))]
