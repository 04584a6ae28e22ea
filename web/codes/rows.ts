import { CodeError, type IdTable, messageOf, packRow, peekRow, unpackRow } from '../../src/model/scouting/code/index.ts'
import type { Row } from '../../src/model/scouting/types.ts'
import { type Shown, shownOf } from './shown.ts'

/** Photos are too long for codes: a hundred kilobytes are minutes. They wait for the network or go by file. */
export const fitsACode = (row: Row): boolean => row.kind !== 'photo'

/** Finished rows as codes: one still picture where they fit it. `tableOf`: of the game's revision that a row was made with. */
export function shownRows(rows: readonly Row[], tableOf: (row: Row) => IdTable): Shown {
  return shownOf(messageOf({ what: 'rows', rows: rows.map((row) => packRow(row, tableOf(row))) }))
}

/** The table of ids of a revision of an event's game; null: it is not known here. */
export type FindTable = (event: string, revision: number) => Promise<IdTable | null>

/** The rows that codes carried. Throws CodeError: 'otherGame' where their game is not known, or is another one. */
export async function rowsFrom(packed: readonly Uint8Array[], find: FindTable): Promise<Row[]> {
  const rows: Row[] = []
  for (const bytes of packed) {
    const asked = peekRow(bytes)
    const table = asked ? await find(asked.event, asked.game) : { places: [], ids: [], check: 0 }
    if (!table) throw new CodeError('otherGame')
    rows.push(unpackRow(bytes, table))
  }
  return rows
}
