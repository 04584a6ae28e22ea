import { matchOf } from './observedTeam.ts'
import type { Row } from './types.ts'

/** A row with the text that is kept and hashed: canonical JSON, and its SHA-256 in hexadecimal. */
export interface HashedRow {
  row: Row
  text: string
  hash: string
}

/** What is kept of a row, in the order of `columns`. */
export type Cells = readonly (string | number | null)[]

/** What a database keeps of a row beside its workspace, when it came and who handed it in. */
export const columns = [
  'id',
  'event',
  'kind',
  'match',
  'team',
  'alliance',
  'position',
  'identifiedBy',
  'device',
  'sequence',
  'scout',
  'replaces',
  'hash',
  'body',
] as const

const place = Object.fromEntries(columns.map((name, index) => [name, index])) as Record<
  (typeof columns)[number],
  number
>

/** One of the cells that hold a text in every row. */
export const textIn = (cells: Cells, name: 'id' | 'event' | 'device' | 'scout' | 'hash'): string =>
  cells[place[name]] as string

/** The row itself; null where only what it is known by is at hand. */
export const bodyIn = (cells: Cells): string | null => cells[place.body] as string | null

/** Which record a row takes the place of: a corrected observation says so itself. */
const replacedBy = ({ row }: HashedRow): string | null =>
  row.kind === 'observation' ? (row.body.replaces ?? null) : null

/** @param replaces the record that it takes the place of, where the row does not say it */
export function cellsOf(hashed: HashedRow, replaces = replacedBy(hashed)): Cells {
  const { row, text, hash } = hashed
  const { id, event, kind, device, sequence, scout, seat, body } = row
  const team = 'team' in body ? body.team : null
  const identifiedBy = row.kind === 'observation' ? row.body.identifiedBy : null
  const of = [id, event, kind, matchOf(row), team, seat?.alliance ?? null, seat?.position ?? null, identifiedBy]
  return [...of, device, sequence, scout, replaces, hash, text]
}

/**
 * Rows on their way from thread to thread: as a few texts they go at once, cell by cell it would take several times as long on both
 * sides. `Bodies` are the texts of the rows, a line for each: canonical JSON has no line breaks. Null: only what the rows are known
 * by is at hand.
 */
export interface PackedRows<Bodies = string> {
  count: number
  /** JSON of all cells but the bodies, column by column: one cell where it is the same in all rows, else a list. */
  heads: string
  /** Of each row, a line each. */
  ids: string
  /** Who recorded them, each once. */
  scouts: readonly string[]
  bodies: Bodies | null
}

export function packRows(rows: readonly Cells[]): PackedRows {
  const heads = columns.slice(0, place.body).map((_, column) => {
    const first = rows[0]?.[column] ?? null
    return rows.every((cells) => cells[column] === first) ? first : rows.map((cells) => cells[column])
  })
  return {
    count: rows.length,
    heads: JSON.stringify(heads),
    ids: rows.map((cells) => textIn(cells, 'id')).join('\n'),
    scouts: [...new Set(rows.map((cells) => textIn(cells, 'scout')))],
    bodies: rows.map(bodyIn).join('\n'),
  }
}

/** The rows that were packed. */
export function unpackRows({ count, heads, bodies }: PackedRows): Cells[] {
  const across = JSON.parse(heads) as (Cells | Cells[number])[]
  const texts = bodies?.split('\n')
  return Array.from({ length: count }, (_, row) => {
    const cells = across.map((of) => (Array.isArray(of) ? (of[row] as Cells[number]) : (of as Cells[number])))
    cells.push(texts ? texts[row]! : null)
    return cells
  })
}
