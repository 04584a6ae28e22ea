/** The type of a column, in the words of the Frictionless Table Schema. */
export type ColumnType = 'string' | 'number' | 'integer' | 'boolean'

export interface Column {
  /** The heading in the file: small letters, digits and underscores, unique in its table. */
  name: string
  /** The heading for people. */
  title: string
  type: ColumnType
  /** Unit of its numbers, such as 's' or 'points a match'. */
  unit?: string
}

/** null: nothing is known here. An empty text is written, and read back, as null. */
export type Cell = string | number | boolean | null

export interface TableData {
  /** The file's name without its ending. */
  name: string
  title: string
  columns: readonly Column[]
  rows: readonly (readonly Cell[])[]
}

/** A name for a file or column from any text: small letters, digits and underscores. */
export function nameFrom(text: string): string {
  const plain = text
    .replaceAll('ß', 'ss')
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '_')
    .replace(/^_+|_+$/g, '')
  return plain === '' ? 'column' : /^[0-9]/.test(plain) ? `n_${plain}` : plain
}

/** Names from texts, each only once: a second 'points' is 'points_2'. */
export function uniqueNames(texts: readonly string[]): string[] {
  const taken = new Set<string>()
  return texts.map((text) => {
    const name = nameFrom(text)
    let unique = name
    for (let count = 2; taken.has(unique); count++) unique = `${name}_${count}`
    taken.add(unique)
    return unique
  })
}
