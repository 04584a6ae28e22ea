import { type Cell, type Column, nameFrom, type TableData, uniqueNames } from './table.ts'

const number = /^([+\u2212-]?)(\d+(?:[.,]\d+)?)(?:[\u00a0 ]?(%|s))?$/

interface Read {
  value: number
  unit: string
}

/** A cell as it is shown, or with it the number as it was computed; null: there is none. */
export type ShownCell = string | number | { shown: string; value: number | null; unit: string }

function readShown(cell: ShownCell): Read | null {
  if (typeof cell === 'object') return cell.value === null ? null : { value: cell.value, unit: cell.unit }
  if (typeof cell === 'number') return { value: cell, unit: '' }
  const found = number.exec(cell.trim())
  if (!found) return null
  const [, sign, digits, unit = ''] = found
  const value = Number(digits!.replace(',', '.'))
  return { value: sign === '' || sign === '+' ? value : -value, unit }
}

const nothing = (cell: ShownCell): boolean =>
  typeof cell === 'object' ? cell.value === null : cell === '' || cell === '–'

/**
 * A table as it is shown on the screen, its numbers as they were computed where that is known and as rounded there
 * otherwise: a column of nothing but numbers in one unit is a column of numbers, every other one of text.
 */
export function shownTable(title: string, head: readonly string[], rows: readonly (readonly ShownCell[])[]): TableData {
  const names = uniqueNames(head)
  const reads = rows.map((row) => row.map((cell) => (nothing(cell) ? null : readShown(cell))))
  const columns = head.map((heading, at): Column => {
    const cells = rows.flatMap((row, line) => (nothing(row[at]!) ? [] : [reads[line]![at] ?? null]))
    const units = new Set(cells.map((cell) => cell?.unit))
    const numeric = cells.length > 0 && cells.every((cell) => cell !== null) && units.size === 1
    const unit = [...units][0]
    return {
      name: names[at]!,
      title: heading,
      type: numeric ? 'number' : 'string',
      ...(numeric && unit ? { unit } : {}),
    }
  })
  return {
    name: nameFrom(title),
    title,
    columns,
    rows: rows.map((row, line) =>
      row.map((cell, at): Cell => {
        if (nothing(cell)) return null
        if (columns[at]!.type === 'number') return reads[line]![at]!.value
        return typeof cell === 'object' ? cell.shown : String(cell)
      }),
    ),
  }
}
