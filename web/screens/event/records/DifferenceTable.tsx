import { words } from '../../../words/catalogue.ts'
import type { Difference } from './differences.ts'
import { type Fact, isTap } from './facts.ts'

/** What is different, one line each, what there was beside what there is. */
export function DifferenceTable(props: { differ: readonly Difference[]; first: string; later: string }) {
  const texts = words().records
  const says = (text: string | null) =>
    text === null ? <span className="soft">{texts.nothing}</span> : <span className="own-lines">{text}</span>
  return (
    <div className="scroll" tabIndex={0} role="region" aria-label={texts.differences.table}>
      <table className="tide differences">
        <thead>
          <tr>
            <th scope="col">{texts.differences.what}</th>
            <th scope="col">{props.first}</th>
            <th scope="col">{props.later}</th>
          </tr>
        </thead>
        <tbody>
          {props.differ.map(({ key, what, first, later }) => (
            <tr key={key}>
              <th scope="row">{what}</th>
              <td>{says(first)}</td>
              <td>{says(later)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

/** Lines of a record, folded. */
export function AllFacts(props: { title: string; facts: readonly Fact[] }) {
  return (
    <details>
      <summary>{props.title}</summary>
      <FactList facts={props.facts} />
    </details>
  )
}

/** What a record says; its taps, which may be fifty, are folded. */
export function RecordFacts(props: { facts: readonly Fact[] }) {
  const taps = props.facts.filter(isTap)
  return (
    <>
      <FactList facts={props.facts.filter((fact) => !isTap(fact))} />
      {taps.length > 0 && (
        <details>
          <summary>{words().records.correct.taps(taps.length)}</summary>
          <ol className="record-taps">
            {taps.map(({ key, says }) => (
              <li key={key}>{says}</li>
            ))}
          </ol>
        </details>
      )}
    </>
  )
}

function FactList(props: { facts: readonly Fact[] }) {
  return (
    <dl className="record-facts">
      {props.facts.map(({ key, what, says }) => (
        <div key={key}>
          <dt>{what}</dt>
          <dd className="own-lines">{says}</dd>
        </div>
      ))}
    </dl>
  )
}
