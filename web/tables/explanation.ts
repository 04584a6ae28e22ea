import { words } from '../words/catalogue.ts'
import type { Explanation } from '../words/explain.ts'
import { nameFrom, type TableData } from './table.ts'

/** How a number came about, as a table for a file: its parts, their sum, and its inputs, as they are shown. */
export function explanationTable({ title, result, parts, total, inputs, source }: Explanation): TableData {
  const { heads } = words().tables
  const texts = words().explain
  const line = (kind: string, label: string, value: string, note = '') => [kind, label, value, note]
  return {
    name: nameFrom(title),
    title,
    columns: [
      { name: 'kind', title: heads.what, type: 'string' },
      { name: 'number', title: heads.number, type: 'string' },
      { name: 'value', title: heads.value, type: 'string' },
      { name: 'note', title: heads.note, type: 'string' },
    ],
    rows: [
      line(texts.result, title, result, source),
      ...parts.map((part) => line(texts.parts, part.label, part.value, part.note)),
      ...(total ? [line(texts.total, total.label, total.value)] : []),
      ...inputs.map(({ label, value }) => line(texts.inputs, label, value)),
    ],
  }
}
