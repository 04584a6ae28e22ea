import type { Row } from './types.ts'

/** A record as far as corrections are concerned. */
export interface Replacing {
  arrival: number
  row: Pick<Row, 'id'>
  /** Id of the record that it takes the place of. */
  replaces: string | null
}

/**
 * The records that are in force, in their order: those that no other has taken the place of. Where two replace the same one,
 * the later one is in force, since whoever made it saw the first one or had no way to know of it.
 */
export function currentRecords<Kept extends Replacing>(records: readonly Kept[]): Kept[] {
  const successors = new Map<string, Kept>()
  for (const record of records) {
    if (record.replaces === null) continue
    const before = successors.get(record.replaces)
    if (!before || before.arrival < record.arrival) successors.set(record.replaces, record)
  }
  return records.filter(
    (record) =>
      !successors.has(record.row.id) && (record.replaces === null || successors.get(record.replaces) === record),
  )
}
