import { type ShownCell, shownTable } from './shown.ts'
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

/** A cell as it is shown; with the number as it was computed where the cell holds it (see `cellData`). */
function cellOf(cell: Element): ShownCell {
  const kept = cell.getAttribute('data-value')
  if (kept === null) return textOf(cell)
  return {
    shown: textOf(cell),
    value: kept === '' ? null : Number(kept),
    unit: cell.getAttribute('data-unit') ?? '',
  }
}

const children = (row: Element): Element[] => [...row.querySelectorAll(':scope > th, :scope > td')]

/** A table's heads and rows. One without a heading line, or with cells that span several, is no list of records: null. */
function tableRead(table: Element): { heads: string[]; rows: ShownCell[][] } | null {
  const head = table.querySelector('thead tr')
  if (!head) return null
  const heads = children(head).map(textOf)
  return { heads, rows: [...table.querySelectorAll('tbody tr')].map((row) => children(row).map(cellOf)) }
}

/** The same table where it stands as cards, because the screen is narrow (see `SideBySide`). */
function cardsRead(cards: Element): { heads: string[]; rows: ShownCell[][] } {
  const all = [...cards.children]
  const terms = [...(all[0]?.querySelectorAll('dt') ?? [])].map(textOf)
  return {
    heads: [cards.getAttribute('data-first') ?? '', ...terms],
    rows: all.map((card) => [
      ...[...card.querySelectorAll(':scope > strong')].map(textOf),
      ...[...card.querySelectorAll('dd')].map(cellOf),
    ]),
  }
}

/**
 * All tables of a page, each with its caption, in the page's order; also those that are folded away. Numbers are as they
 * were computed where their cells keep that, otherwise as they are shown.
 */
export function tablesOf(page: ParentNode): TableData[] {
  return [...page.querySelectorAll('table,ul.cards')].flatMap((element) => {
    const found = element.matches('ul') ? cardsRead(element) : tableRead(element)
    if (!found || found.rows.length === 0 || found.rows.some((row) => row.length !== found.heads.length)) return []
    const caption = element.getAttribute('aria-label') ?? textOf(element.querySelector('caption,thead>tr') ?? element)
    return [shownTable(caption, found.heads, found.rows)]
  })
}
