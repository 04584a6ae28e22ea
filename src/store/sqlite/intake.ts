import type { TakeIn } from '../records/intake.ts'
import type { DirectConnection } from './direct.ts'
import { acceptBatch } from './intakeBatch.ts'
import { type Statements, statementsOn } from './intakeStatements.ts'
import { IntakeThread } from './intakeThread.ts'

/** From so many rows on, a commit is made by a thread: for fewer, the way there and back would take longer. */
const large = 30

/** Batch after batch within one transaction, row after row: here a statement costs no way to a server and back. */
export function takeInOn(connection: DirectConnection): { takeIn: TakeIn; close(): Promise<void> } {
  const thread = new IntakeThread(connection)
  let statements: { of: object; are: Statements } | undefined
  const takeIn: TakeIn = async (together) => {
    const rows = together.reduce((sum, { batch }) => sum + batch.rows.length, 0)
    if (rows >= large) return thread.take(together)
    return connection.together((database) => {
      if (statements?.of !== database) statements = { of: database, are: statementsOn(database) }
      const { are } = statements
      return together.map(({ place, batch }) => acceptBatch(are, place, batch))
    })
  }
  return { takeIn, close: () => thread.close() }
}
