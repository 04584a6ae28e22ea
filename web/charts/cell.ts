import type { ReactNode } from 'react'

/** A number in a table: as it is shown, which may be something that opens, and as it was computed, which files keep. */
export interface ValueCell {
  shown: ReactNode
  /** null: there is none. */
  value: number | null
  unit?: string
}

export const isValueCell = (cell: unknown): cell is ValueCell =>
  typeof cell === 'object' && cell !== null && 'shown' in cell && 'value' in cell

/** What a cell's element says about its number to who makes a file of the page: see `tablesOf`. */
export const cellData = (cell: unknown): { 'data-value'?: string; 'data-unit'?: string | undefined } =>
  isValueCell(cell) ? { 'data-value': cell.value === null ? '' : String(cell.value), 'data-unit': cell.unit } : {}

export const cellShown = (cell: ReactNode | ValueCell): ReactNode => (isValueCell(cell) ? cell.shown : cell)
