import papaparse from 'papaparse'
import { type FilledTable, type Table, writeCell } from '../../model/scouting/tables/index.ts'

const byteOrderMark = '\ufeff'

/** A table as CSV by RFC 4180, with a heading line. `mark`: begin with the byte-order mark that some spreadsheets want. */
export function writeTable({ table, rows }: FilledTable, mark: boolean): string {
  const lines = [table.fields.map(({ name }) => name), ...rows.map((row) => row.map(writeCell))]
  return `${mark ? byteOrderMark : ''}${papaparse.unparse(lines, { newline: '\r\n' })}\r\n`
}

/** What stands between cells: a comma, or what spreadsheets write where the comma is for decimals. Names of columns hold none of them. */
function separatorIn(heading: string): string {
  const counted = [',', ';', '\t'].map((sign) => ({ sign, count: heading.split(sign).length }))
  return counted.reduce((most, each) => (each.count > most.count ? each : most)).sign
}

/**
 * The cells of a CSV, line by line, the heading first; null where quotation marks do not close. Where no comma separates them, it
 * may stand for the decimal point in columns of numbers.
 */
export function cellsIn(text: string, { fields }: Pick<Table, 'fields'>): string[][] | null {
  const plain = text.startsWith(byteOrderMark) ? text.slice(1) : text
  // The end of a line within quotation marks does not say how the file's lines end.
  const heading = /^[^\r\n]*\r?\n?/.exec(plain)?.[0] ?? ''
  const newline = heading.endsWith('\r\n') ? '\r\n' : '\n'
  const delimiter = separatorIn(heading)
  const { data, errors } = papaparse.parse<string[]>(plain, { delimiter, newline })
  if (errors.length > 0) return null
  if (delimiter === ',') return data
  const numbers = new Set(fields.filter(({ type }) => type === 'number').map(({ name }) => name))
  const [head = [], ...lines] = data
  const places = head.flatMap((name, place) => (numbers.has(name) ? [place] : []))
  for (const cells of lines)
    for (const place of places) cells[place] = cells[place]?.replace(/^([+-]?\d+),(\d+)$/, '$1.$2') ?? ''
  return data
}
