import type { Difference } from '../../data/difference.ts'
import { TableDownload } from '../../shell/TableDownload.tsx'
import { differencesTable } from '../../tables/answers.ts'
import { words } from '../../words/catalogue.ts'
import { differenceWords, valueWords } from '../../words/differences.ts'

/** What changed, place by place. */
export function DifferenceTable(props: { caption: string; head: [string, string]; rows: Difference[] }) {
  if (props.rows.length === 0) return <p>{words().documents.difference.none}</p>
  return (
    <>
      <div className="scroll" tabIndex={0} role="region" aria-label={props.caption}>
        <table className="tide">
          <caption>{props.caption}</caption>
          <thead>
            <tr>
              <th scope="col">{words().documents.difference.where}</th>
              <th scope="col">{props.head[0]}</th>
              <th scope="col">{props.head[1]}</th>
            </tr>
          </thead>
          <tbody>
            {props.rows.map((row) => (
              <tr key={row.place.join('/')}>
                <th scope="row">{differenceWords(row.place)}</th>
                <td>{valueWords(row.before)}</td>
                <td>{valueWords(row.after)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <TableDownload title={props.caption} table={() => differencesTable(props.rows, props.caption, props.head)} />
    </>
  )
}
