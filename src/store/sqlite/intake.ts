import type { TakeIn } from '../records/intake.ts'
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
  const takeIn: TakeIn = async (together) => {
    const rows = together.reduce((sum, { batch }) => sum + batch.rows.length, 0)
    if (rows >= large) return thread.take(together)
    if (elsewhere > 0) {
      elsewhere -= 1
      return thread.take(together)
    }
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
  return { takeIn, close: () => thread.close() }
}
