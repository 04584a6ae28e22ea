import type { Path, Problem } from '../../errors.ts'
import { type ExchangeSaid, tellExchange } from '../../event/archive/sentences.ts'
import { readCell } from './cells.ts'
import type { CellValue, Line, Table } from './types.ts'

/** Where in a file something is: its table, line and column. */
export type CellPlace = readonly [table: string, line: number, column?: string]

export const problemAt = (place: CellPlace, said: ExchangeSaid): Problem => ({
  path: place as Path,
  ...tellExchange(said),
})

/** The lines of a table whose heading and cells were taken apart already. Columns may stand in any order; all but later ones must be there. */
export function readLines(
  table: Table,
  records: readonly (readonly string[])[],
): { lines: Line[]; problems: Problem[] } {
  const { name, fields } = table
  const [head = [], ...rest] = records
  const known = new Set(fields.map((field) => field.name))
  const places = new Map(head.map((column, index) => [column, index]))
  const problems = [
    ...fields.filter((field) => !places.has(field.name) && !field.mayLack).map((field) => noColumn(name, field.name)),
    ...head
      .filter((column, index) => !known.has(column) || head.indexOf(column) < index)
      .map((column) => problemAt([name, 1, column], { code: 'strangeColumn', parts: { column } })),
  ]
  if (problems.length > 0) return { lines: [], problems }
  const lines = rest.flatMap((cells, index): Line[] => {
    const line = index + 2
    // Spreadsheets leave empty lines behind.
    if (cells.every((cell) => cell === '')) return []
    if (cells.length !== head.length) {
      const parts = { got: cells.length, wanted: head.length }
      problems.push(problemAt([name, line], { code: 'otherCells', parts }))
      return []
    }
    const values: { [field: string]: CellValue } = {}
    for (const field of fields) {
      const place = places.get(field.name)
      const read = place === undefined ? { value: null } : readCell(cells[place]!, field.type)
      if ('code' in read) problems.push(problemAt([name, line, field.name], read))
      else if (read.value === null && field.needed)
        problems.push(problemAt([name, line, field.name], { code: 'cellNeeded', parts: {} }))
      else values[field.name] = read.value
    }
    return [{ line, values }]
  })
  return { lines, problems }
}

const noColumn = (table: string, column: string): Problem =>
  problemAt([table, 1, column], { code: 'noColumn', parts: { column } })
