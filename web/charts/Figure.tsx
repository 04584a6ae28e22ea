import type { ReactNode } from 'react'

export interface ChartTable {
  head: string[]
  rows: (string | number)[][]
}

/** A picture with its title and its data as a table, which a screen reader can read and everybody can open. */
export function Figure(props: { title: string; hideTitle?: boolean; table: ChartTable; children: ReactNode }) {
  return (
    <figure className="chart">
      <figcaption className={props.hideTitle ? 'visually-hidden' : undefined}>{props.title}</figcaption>
      {props.children}
      <details>
        <summary>Numbers as a table</summary>
        <div className="scroll" tabIndex={0} role="region" aria-label={`${props.title}: table`}>
          <DataTable caption={props.title} table={props.table} />
        </div>
      </details>
    </figure>
  )
}

export function DataTable(props: { caption: string; table: ChartTable; showCaption?: boolean }) {
  return (
    <table className="tide">
      <caption className={props.showCaption ? undefined : 'visually-hidden'}>{props.caption}</caption>
      <thead>
        <tr>
          {props.table.head.map((cell, column) => (
            <th key={cell} scope="col" className={column > 0 ? 'figure' : undefined}>
              {cell}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {props.table.rows.map((row) => (
          <tr key={row.join('|')}>
            {row.map((cell, column) =>
              column === 0 ? (
                <th key={props.table.head[column]} scope="row">
                  {cell}
                </th>
              ) : (
                <td key={props.table.head[column]} className="figure">
                  {cell}
                </td>
              ),
            )}
          </tr>
        ))}
      </tbody>
    </table>
  )
}
