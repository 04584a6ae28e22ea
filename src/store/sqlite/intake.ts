import type { TakeIn } from '../records/intake.ts'
import type { DirectConnection } from './direct.ts'
import { acceptBatch } from './intakeBatch.ts'
import { type Statements, statementsOn } from './intakeStatements.ts'

/** Batch after batch within one transaction, row after row: here a statement costs no way to a server and back. */
export function takeInOn(connection: DirectConnection): TakeIn {
  let statements: { of: object; are: Statements } | undefined
  return (together) =>
    connection.together((database) => {
      if (statements?.of !== database) statements = { of: database, are: statementsOn(database) }
      const { are } = statements
      return together.map(({ place, batch }) => acceptBatch(are, place, batch))
    })
}
