import { parse } from 'csv-parse/sync'

/** Tables as a spreadsheet writes them where the comma is for decimals: a byte-order mark, another separator, quotation marks everywhere. */
export function bySpreadsheet(files: { [name: string]: string }, separator: string): { [name: string]: string } {
  const rewritten = Object.entries(files).map(([name, text]) => {
    if (!name.endsWith('.csv')) return [name, text]
    const [head = [], ...lines] = parse(text, { record_delimiter: '\r\n' }) as string[][]
    const decimals = lines.map((cells) => cells.map((cell) => cell.replace(/^(-?\d+)\.(\d+)$/, '$1,$2')))
    const quoted = [head, ...decimals].map((cells) => cells.map((cell) => `"${cell.replaceAll('"', '""')}"`))
    return [name, `\ufeff${quoted.map((cells) => cells.join(separator)).join('\r\n')}\r\n`]
  })
  return Object.fromEntries(rewritten)
}
