import type { Part } from '../../../../src/model/timing/parts.ts'
import type { Cell, Column, TableData } from '../../../tables/table.ts'
import { words } from '../../../words/catalogue.ts'
import { numbersOf, type PartKind } from '../numbers.ts'
import { flowHead, headOf, siOf } from './heads.ts'

/** A compressor's points in one cell: pressure and flow, points apart by semicolons. */
export const flowText = (flow: readonly (readonly [number, number])[]): string =>
  flow.map(([pressure, amount]) => `${pressure} ${amount}`).join('; ')

const fileNames: { readonly [Kind in PartKind]: string } = {
  motor: 'motors',
  cylinder: 'cylinders',
  valve: 'valves',
  compressor: 'compressors',
  tank: 'tanks',
  wheel: 'wheels',
}

/** Parts of one kind as a table with all their digits, in SI. */
export function partsTable(kind: PartKind, parts: readonly Part[]): TableData {
  const texts = words().parts
  const text = (name: string, title: string): Column => ({ name, title, type: 'string' })
  const numbers = numbersOf[kind].map(({ key, column, quantity }): Column => {
    const unit = siOf(quantity)
    const title = texts.labels[key as keyof typeof texts.labels]
    return { name: headOf(column, quantity), title, type: 'number', ...(unit ? { unit } : {}) }
  })
  const flow = kind === 'compressor' ? [text(flowHead, texts.labels.flow)] : []
  return {
    name: fileNames[kind],
    title: texts.many[kind],
    columns: [
      text('id', texts.id),
      text('name', texts.name),
      text('source', texts.source),
      text('date', texts.date),
      ...numbers,
      ...flow,
    ],
    rows: parts.map((part) => [
      part.id,
      part.name,
      part.source,
      part.date,
      ...numbersOf[kind].map(({ key }) => (part as unknown as { [key: string]: number | undefined })[key] ?? null),
      ...(part.kind === 'compressor' ? [flowText(part.flow)] : []),
    ]) as Cell[][],
  }
}
