import papaparse from 'papaparse'
import { type FilledTable, writeCell } from '../../model/scouting/tables/index.ts'

const byteOrderMark = '\ufeff'

/** A table as CSV by RFC 4180, with a heading line. `mark`: begin with the byte-order mark that some spreadsheets want. */
export function writeTable({ table, rows }: FilledTable, mark: boolean): string {
  const lines = [table.fields.map(({ name }) => name), ...rows.map((row) => row.map(writeCell))]
  return `${mark ? byteOrderMark : ''}${papaparse.unparse(lines, { newline: '\r\n' })}\r\n`
}

/** The cells of a CSV, line by line, the heading first; null where quotation marks do not close. */
export function cellsIn(text: string): string[][] | null {
  const plain = text.startsWith(byteOrderMark) ? text.slice(1) : text
  // The end of a line within quotation marks does not say how the file's lines end.
  const heading = /^[^"\r\n]*\r?\n?/.exec(plain)?.[0] ?? ''
  const newline = heading.endsWith('\r\n') ? '\r\n' : '\n'
  const { data, errors } = papaparse.parse<string[]>(plain, { delimiter: ',', newline })
  return errors.length > 0 ? null : data
}
