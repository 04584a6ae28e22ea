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

/** What a row is known by, without the row. */
export const withoutBody = (cells: Cells): Cells =>
  columns.map((name, index) => (['id', 'event', 'device', 'scout', 'hash'].includes(name) ? cells[index]! : null))

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
 * Rows as one text, which goes from thread to thread at once: text by text it would take several times as long. A line for all cells but
 * the bodies, then one for each body, empty where it is not at hand: canonical JSON has no line breaks.
 */
export function packCells(rows: readonly Cells[]): string {
  const heads = JSON.stringify(rows.map((cells) => cells.slice(0, place.body)))
  return [heads, ...rows.map((cells) => bodyIn(cells) ?? '')].join('\n')
}

/** The rows of which `packCells` made one text. */
export function unpackCells(packed: string): Cells[] {
  const [heads = '', ...bodies] = packed.split('\n')
  return (JSON.parse(heads) as (string | number | null)[][]).map((cells, index) => {
    cells.push(bodies[index] || null)
    return cells
  })
}
