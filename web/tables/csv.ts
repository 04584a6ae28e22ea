import type { ParseResult } from 'papaparse'
import { words } from '../words/catalogue.ts'
import { escapeText, unescapeText } from './formula.ts'
import type { Cell, Column, TableData } from './table.ts'

const byteOrderMark = '\ufeff'
const lineEnd = '\r\n'

/** The library is fetched when a table is written or read for the first time. */
const library = async () => (await import('papaparse')).default

function written(cell: Cell): string {
  if (cell === null) return ''
  if (typeof cell === 'number') {
    if (!Number.isFinite(cell)) throw new Error(words().tables.notFinite(String(cell)))
    return String(cell)
  }
  return typeof cell === 'boolean' ? String(cell) : escapeText(cell)
}

/** A table as CSV by RFC 4180, with a heading line. `mark`: begin with the byte-order mark that some spreadsheets want. */
export async function writeCsv(table: TableData, options: { mark?: boolean } = {}): Promise<string> {
  const { unparse } = await library()
  const alone = table.columns.length === 1
  const lines = [table.columns.map(({ name }) => name), ...table.rows.map((row) => row.map(written))]
  // An empty line would be no record at all.
  const text = unparse(lines, { newline: lineEnd, quotes: (value) => alone && value === '' })
  return `${options.mark ? byteOrderMark : ''}${text}${lineEnd}`
}

/** The records of a CSV, the heading line among them. Throws a sentence where quotation marks do not close. */
export async function csvRecords(text: string, delimiter = ','): Promise<string[][]> {
  const { parse } = await library()
  const plain = text.startsWith(byteOrderMark) ? text.slice(1) : text
  const { data, errors }: ParseResult<string[]> = parse(plain, { delimiter, newline: newlineOf(plain) })
  const [broken] = errors
  if (broken) throw new Error(words().tables.broken((broken.row ?? 0) + 1))
  // The end of the last line begins no other.
  if (data.at(-1)?.length === 1 && data.at(-1)![0] === '' && /[\r\n]$/.test(plain)) data.pop()
  return data
}

/**
 * The rows of a CSV with these columns, as `writeCsv` writes it. Throws a sentence that names the line and the column of
 * what can not be read.
 */
export async function readCsv(text: string, columns: readonly Column[]): Promise<Cell[][]> {
  const texts = words().tables
  const [head = [], ...rows] = await csvRecords(text)
  const wanted = columns.map(({ name }) => name)
  if (head.join('\n') !== wanted.join('\n')) throw new Error(texts.otherHead(head.join(', '), wanted.join(', ')))
  return rows.map((row, index) => {
    if (row.length !== columns.length) throw new Error(texts.cells(index + 2, row.length, columns.length))
    return row.map((cell, at) => read(cell, columns[at]!, index + 2))
  })
}

const newlineOf = (text: string): '\r\n' | '\n' => (/^(?:[^"\n]|"[^"]*")*?\r\n/.test(text) ? '\r\n' : '\n')

function read(cell: string, { type, name }: Column, line: number): Cell {
  if (cell === '') return null
  if (type === 'string') return unescapeText(cell)
  if (type === 'boolean') {
    if (cell === 'true' || cell === 'false') return cell === 'true'
  } else if (
    /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(cell) &&
    (type === 'number' || Number.isInteger(Number(cell)))
  ) {
    return Number(cell)
  }
  throw new Error(words().tables.notType(line, name, cell))
}
