import type { Part } from '../../../../src/model/timing/parts.ts'
import { idFrom } from '../../../data/identity.ts'
import { limited } from '../../../shell/fields/parse.ts'
import { csvRecords } from '../../../tables/csv.ts'
import { unescapeText } from '../../../tables/formula.ts'
import type { Measured } from '../../../units/quantities.ts'
import { unitsShown } from '../../../units/system.ts'
import { sayQuantity } from '../../../units/write.ts'
import { words } from '../../../words/catalogue.ts'
import { flowPoint, numbersOf, type PartKind, type PartNumber } from '../numbers.ts'
import { isDay, partProblems } from '../problems.ts'
import { type Heads, headsOf, kindOf } from './headings.ts'

/** A line of the table: the part that it describes, or what is wrong with it in sentences. */
export interface ReadLine {
  /** Number of the record in the file; the heading line is 1. */
  line: number
  name: string
  part: Part | null
  problems: string[]
}

export interface ReadTable {
  kind: PartKind
  lines: ReadLine[]
}

/** What is read at most: more is no shelf, and would take the browser long. */
export const largest = { bytes: 1_000_000, parts: 500 }

/** A table as pasted has tabs, as saved by a spreadsheet of a country with decimal commas semicolons. */
function delimiterOf(text: string): string {
  const [head = ''] = text.split(/\r?\n/, 1)
  return ['\t', ';'].find((sign) => head.includes(sign)) ?? ','
}

/**
 * The parts in the text of a table. Throws a sentence where it is no table of parts at all; what is wrong with single lines
 * is said with them. A line without an id gets a new one.
 */
export async function readParts(text: string): Promise<ReadTable> {
  const texts = words().parts.csv
  if (text.trim() === '') throw new Error(texts.empty)
  const delimiter = delimiterOf(text)
  const [head = [], ...rows] = await csvRecords(text, delimiter)
  const heads = head.map((cell) => cell.trim().toLowerCase())
  const kind = kindOf(heads)
  if (kind === null) throw new Error(texts.noKind(heads.join(', ')))
  const found = headsOf(kind, heads)
  const filled = rows.map((cells, index) => ({ cells, line: index + 2 })).filter(({ cells }) => cells.some(Boolean))
  if (filled.length === 0) throw new Error(texts.empty)
  if (filled.length > largest.parts) throw new Error(texts.tooMany(largest.parts, filled.length))
  const lines = filled.map(({ cells, line }) => readLine(kind, { cells, line, heads, found, comma: delimiter !== ',' }))
  return { kind, lines: withoutTwins(lines) }
}

interface Row {
  cells: readonly string[]
  line: number
  heads: readonly string[]
  found: Heads
  /** Decimal commas are read. */
  comma: boolean
}

function readLine(kind: PartKind, row: Row): ReadLine {
  const { cells, line, heads, found } = row
  const texts = words().parts.csv
  const at = (head: string): string => unescapeText(cells[heads.indexOf(head)] ?? '')
  const name = at('name')
  if (cells.length !== heads.length)
    return { line, name, part: null, problems: [texts.cells(cells.length, heads.length)] }
  const problems: string[] = []
  const numbers = numbersOf[kind].flatMap((number) => {
    const value = readCell(number, row)
    if (typeof value === 'object') problems.push(value.error)
    return typeof value === 'number' ? [[number.key, value] as const] : []
  })
  const flow = found.flow === null ? [] : readFlow(found.flow, at(found.flow), row.comma)
  if ('error' in flow) problems.push(flow.error)
  if (name.trim() === '') problems.push(texts.noValue('name'))
  const date = at('date').trim()
  if (!isDay(date)) problems.push(texts.noDay(date))
  const id = at('id') === '' ? idFrom(name) : at('id')
  const part = {
    kind,
    id,
    name,
    source: at('source'),
    date,
    ...Object.fromEntries(numbers),
    ...(kind === 'compressor' ? { flow } : {}),
  } as unknown as Part
  // What the numbers say together can be told only where each is there.
  if (problems.length === 0)
    for (const { path, message } of partProblems(part)) problems.push(texts.at(labelOf(path[0]), message))
  return { line, name, part: problems.length === 0 ? part : null, problems }
}

/** What a field of a part is called. */
export function labelOf(key: unknown): string {
  const { labels, name, source, date, id } = words().parts
  const all: { readonly [key: string]: string } = { ...labels, name, source, date, id }
  return all[String(key)] ?? String(key)
}

const decimals = (cell: string, comma: boolean): number | null => {
  const plain = (comma ? cell.replace(',', '.') : cell).trim().replace('\u2212', '-')
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(plain) ? Number(plain) : null
}

/** A value as the limits beside it are written. */
const said = (value: number, quantity: Measured | undefined): string =>
  quantity ? sayQuantity(value, quantity) : String(value)

/** A number in SI, undefined where it may be missing and is, or the sentence about it. */
function readCell(number: PartNumber, { cells, heads, found, comma }: Row): number | undefined | { error: string } {
  const texts = words().parts.csv
  const column = found.numbers.get(number.key)
  if (!column) return undefined
  const cell = cells[heads.indexOf(column.head)] ?? ''
  if (cell.trim() === '') return number.optional ? undefined : { error: texts.noValue(column.head) }
  const typed = decimals(cell, comma)
  const value = typed === null || !Number.isFinite(typed) ? null : column.read(typed)
  if (value === null) return { error: texts.noNumber(column.head, cell) }
  const { quantity, min, max, above } = number
  const rules = {
    max,
    ...(quantity && { quantity }),
    ...(min !== undefined && { min }),
    ...(above !== undefined && { above }),
  }
  const result = limited(value, said(value, quantity), rules, unitsShown())
  return 'error' in result ? { error: texts.at(column.head, result.error) } : value
}

function readFlow(head: string, cell: string, comma: boolean): [number, number][] | { error: string } {
  const texts = words().parts.csv
  if (cell.trim() === '') return { error: texts.noValue(head) }
  const points = cell.split(';').map((point) =>
    point
      .trim()
      .split(/\s+/)
      .map((each) => decimals(each, comma)),
  )
  const { least, most, pressure, flow } = flowPoint
  if (points.some((point) => point.length !== 2 || point.includes(null))) return { error: texts.noFlow(head, cell) }
  if (points.length < least || points.length > most) return { error: texts.fewPoints(least, most, points.length) }
  const read = points as [number, number][]
  const wrong = read.flatMap(([each, amount]) => [
    limited(each, said(each, pressure.quantity), pressure, unitsShown()),
    limited(amount, said(amount, flow.quantity), flow, unitsShown()),
  ])
  const first = wrong.find((result) => 'error' in result)
  return first && 'error' in first ? { error: texts.at(head, first.error) } : read
}

/** Two lines can not be the same part: the later one is said. */
function withoutTwins(lines: readonly ReadLine[]): ReadLine[] {
  const seen = new Map<string, number>()
  return lines.map((line) => {
    if (!line.part) return line
    const { id } = line.part
    const before = seen.get(id)
    if (before === undefined) seen.set(id, line.line)
    return before === undefined ? line : { ...line, part: null, problems: [words().parts.csv.twiceId(id, before)] }
  })
}
