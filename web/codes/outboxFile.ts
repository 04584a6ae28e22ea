import { type Row, recordKinds } from '../../src/model/scouting/types.ts'

const kind = 'outbox'
const version = 1

/** Rows as a file: the last way to the lead, with photos. */
export function outboxFile(rows: readonly Row[]): { name: string; text: string } {
  const [first] = rows
  const name = first ? `records-${first.event}-${first.device.slice(0, 8)}.json` : 'records.json'
  return { name, text: `${JSON.stringify({ format: version, kind, rows })}\n` }
}

export type OutboxFileProblem = 'foreign' | 'newer' | 'damaged'

const isRow = (value: unknown): value is Row => {
  const row = value as Partial<Row> | null
  return typeof row?.id === 'string' && recordKinds.some((each) => each === row.kind) && typeof row.body === 'object'
}

/** The rows of such a file. The server checks their contents, as it does with rows from the network. */
export function readOutboxFile(text: string): { rows: Row[] } | { problem: OutboxFileProblem } {
  let found: { format?: unknown; kind?: unknown; rows?: unknown } | null
  try {
    found = JSON.parse(text.replace(/^\ufeff/, ''))
  } catch {
    return { problem: 'foreign' }
  }
  if (found?.kind !== kind || typeof found.format !== 'number') return { problem: 'foreign' }
  if (found.format > version) return { problem: 'newer' }
  const { rows } = found
  return Array.isArray(rows) && rows.every(isRow) ? { rows } : { problem: 'damaged' }
}
