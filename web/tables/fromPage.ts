import { shownTable } from './shown.ts'
import type { TableData } from './table.ts'

/** What a cell shows: the value of a field in it, else its text without what only a screen reader is told. */
function textOf(cell: Element): string {
  const fields = [...cell.querySelectorAll<HTMLInputElement | HTMLSelectElement>('input, select')]
  if (fields.length > 0) return fields.map((field) => field.value).join(' ')
  const copy = cell.cloneNode(true) as Element
  for (const hidden of copy.querySelectorAll('.visually-hidden, .cell-label, s, .own-mark')) hidden.remove()
  for (const line of copy.querySelectorAll('br, div')) line.before(' ')
  return (copy.textContent ?? '').replace(/[^\S\u00a0]+/g, ' ').trim()
}

const cellsOf = (row: Element): string[] => [...row.querySelectorAll(':scope > th, :scope > td')].map(textOf)

/**
 * All tables of a page as they are shown, each with its caption, in the page's order; also those that are folded away.
 * A table without a heading line, or with cells that span several, is left out: it is no list of records.
 */
export function tablesOf(page: ParentNode): TableData[] {
  return [...page.querySelectorAll('table')].flatMap((table) => {
    const head = table.querySelector('thead tr')
    const rows = [...table.querySelectorAll('tbody tr')].map(cellsOf)
    if (!head) return []
    const heads = cellsOf(head)
    if (rows.length === 0 || rows.some((row) => row.length !== heads.length)) return []
    const title = textOf(table.querySelector('caption') ?? head)
    return [shownTable(title, heads, rows)]
  })
}
