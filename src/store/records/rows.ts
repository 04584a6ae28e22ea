import { columns } from '../../model/scouting/cells.ts'
import type { Row } from '../../model/scouting/types.ts'
import type { FieldRecordModel } from '../generated/models.ts'
import type { Cells, StoredRecord } from './types.ts'

/** What of a database's row is needed for a record. */
export const recordColumns = {
  arrival: true,
  receivedAt: true,
  body: true,
  hash: true,
  replaces: true,
  person: true,
} as const

export function recordOf(row: Pick<FieldRecordModel, keyof typeof recordColumns>): StoredRecord {
  const { arrival, receivedAt, body, hash, replaces, person } = row
  return { arrival, receivedAt: receivedAt.toISOString(), row: JSON.parse(body) as Row, hash, replaces, person }
}

/** Cells by the names of their columns. */
export const dataOf = (cells: Cells) =>
  Object.fromEntries(columns.map((name, index) => [name, cells[index] ?? null])) as unknown as Pick<
    FieldRecordModel,
    (typeof columns)[number]
  >
