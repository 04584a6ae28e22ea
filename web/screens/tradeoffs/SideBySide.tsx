import type { ReactNode } from 'react'
import { cellData, cellShown, type ValueCell } from '../../charts/cell.ts'
import { useWidth } from '../../charts/useWidth.ts'
import './sideBySide.css'

/** How much larger letters are than usual, by the browser's setting. */
function letters(): number {
  // Drawn as text, as some tests do, there is no page to ask.
  if (typeof document === 'undefined') return 1
  return (Number.parseFloat(getComputedStyle(document.documentElement).fontSize) || 16) / 16
}

/** Printed letters are a quarter smaller than those of a window, so that a page has room for as much more. */
const paperOfLetters = 840

/** One thing among several that are set side by side: its name, and a cell for each column. */
export interface SideRow {
  id: string
  name: ReactNode
  cells: (ReactNode | ValueCell)[]
}

/**
 * Rows side by side: a table where there is room for its columns, and where there is none a card for each row, so that
 * nothing scrolls sideways. `least` is the width of a column (px) with letters as large as they usually are.
 */
export function SideBySide(props: {
  caption: string
  first: string
  columns: string[]
  rows: SideRow[]
  least?: number
}) {
  const { caption, first, columns, rows, least = 112 } = props
  const { ref, width } = useWidth<HTMLDivElement>(paperOfLetters)
  return (
    <div ref={ref} className="side-by-side">
      {width >= (columns.length + 1.6) * least * letters() ? (
        <table className="tide">
          <caption className="visually-hidden">{caption}</caption>
          <thead>
            <tr>
              <th scope="col">{first}</th>
              {columns.map((column) => (
                <th key={column} scope="col" className="figure head">
                  {column}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.id}>
                <th scope="row">{row.name}</th>
                {row.cells.map((cell, index) => (
                  <td key={columns[index]} className="figure" {...cellData(cell)}>
                    {cellShown(cell)}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      ) : (
        <ul className="cards" aria-label={caption} data-first={first}>
          {rows.map((row) => (
            <li key={row.id}>
              <strong>{row.name}</strong>
              <dl>
                {row.cells.map((cell, index) => (
                  <div key={columns[index]}>
                    <dt>{columns[index]}</dt>
                    <dd {...cellData(cell)}>{cellShown(cell)}</dd>
                  </div>
                ))}
              </dl>
            </li>
          ))}
        </ul>
      )}
    </div>
  )
}
