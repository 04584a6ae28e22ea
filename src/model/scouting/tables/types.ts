/** The type of a column, in the words of the Frictionless Table Schema; an array is a JSON list of texts. */
export type CellType = 'string' | 'number' | 'integer' | 'boolean' | 'array'

/** What a cell says; null: nothing. */
export type CellValue = string | number | boolean | readonly string[] | null

export interface Field {
  /** The heading in the file. */
  name: string
  type: CellType
  about: string
  unit?: string
  /** Where in the line's document it stands. */
  path: readonly string[]
  /** The cell must not be empty. */
  needed?: true
  /** An empty cell is null rather than left out, where what it stands in is there. */
  nullable?: true
  /** The column may be missing: files that were written before it was there lack it. */
  mayLack?: true
  /** Says only that there is something at its path, which may say nothing else. */
  presence?: true
}

export interface Table {
  /** The file's name without its ending. */
  name: string
  title: string
  about: string
  fields: readonly Field[]
  /** What names a line. */
  key: readonly string[]
  /** Fields that name a line of another table by its key. */
  foreign?: { fields: readonly string[]; table: string; key: readonly string[] }
}

/** A table with its lines, each with a value for each field. */
export interface FilledTable {
  table: Table
  rows: CellValue[][]
}

/** A line that was read: its number in the file, where the heading is 1, and its values by field. */
export interface Line {
  line: number
  values: { readonly [field: string]: CellValue }
}
