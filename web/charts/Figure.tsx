import type { ReactNode } from 'react'
import { words } from '../words/catalogue.ts'
import { cellData, cellShown, type ValueCell } from './cell.ts'

export interface ChartTable {
  head: string[]
  rows: (string | number | ValueCell)[][]
}

/** A picture with its title and its data as a table, which a screen reader can read and everybody can open. */
export function Figure(props: { title: string; hideTitle?: boolean; table: ChartTable; children: ReactNode }) {
  return (
    <figure className="chart">
      <figcaption className={props.hideTitle ? 'visually-hidden' : undefined}>{props.title}</figcaption>
      {props.children}
      <details>
        <summary>{words().charts.table}</summary>
        <div className="scroll" tabIndex={0} role="region" aria-label={words().charts.tableOf(props.title)}>
          <DataTable caption={props.title} table={props.table} />
        </div>
      </details>
    </figure>
  )
}

export function DataTable(props: { caption: string; table: ChartTable; showCaption?: boolean }) {
  // Two columns or rows may be called alike, where their values differ by less than is shown.
  const columns = props.table.head.map((name, index) => ({ name, id: String(index) }))
  const rows = props.table.rows.map((cells, index) => ({ cells, id: String(index) }))
  return (
    <table className="tide">
      <caption className={props.showCaption ? undefined : 'visually-hidden'}>{props.caption}</caption>
      <thead>
        <tr>
          {columns.map(({ name, id }, column) => (
            <th key={id} scope="col" className={column > 0 ? 'figure' : undefined}>
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.id}>
            {row.cells.map((cell, column) =>
              column === 0 ? (
                <th key={columns[column]?.id} scope="row" {...cellData(cell)}>
                  {cellShown(cell)}
                </th>
              ) : (
                <td key={columns[column]?.id} className="figure" {...cellData(cell)}>
                  {cellShown(cell)}
                </td>
              ),
            )}
          </tr>
        ))}
      </tbody>
    </table>
  )
}
