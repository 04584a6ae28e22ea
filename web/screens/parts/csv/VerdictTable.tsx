import { words } from '../../../words/catalogue.ts'
import { listed } from '../../../words/format.ts'
import type { Looked, Outcome } from './useBring.ts'
import type { Verdict } from './verdicts.ts'

/** Each line of a table with what it would do, and after saving with what it did. */
export function VerdictTable({ kind, lines, outcomes }: Looked) {
  const texts = words().parts.csv
  return (
    <div className="scroll" tabIndex={0} role="region" aria-label={texts.verdicts}>
      <table className="tide">
        <caption>
          {texts.verdicts} – {texts.found(words().parts.many[kind], lines.length)}
        </caption>
        <thead>
          <tr>
            <th scope="col">{texts.line}</th>
            <th scope="col">{words().parts.name}</th>
            <th scope="col">{texts.verdict}</th>
          </tr>
        </thead>
        <tbody>
          {lines.map(({ line, name, verdict }) => (
            <tr key={line}>
              <td>{line}</td>
              <th scope="row">{name || '–'}</th>
              <td>
                <Said verdict={verdict} outcome={outcomes.get(line)} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

function Said(props: { verdict: Verdict; outcome: Outcome | undefined }) {
  const texts = words().parts.csv
  const { verdict, outcome } = props
  if (outcome) return 'revision' in outcome ? texts.saved(outcome.revision) : <Bad sentences={[outcome.trouble]} />
  switch (verdict.does) {
    case 'new':
      return texts.isNew
    case 'nothing':
      return texts.isSame(verdict.revision)
    case 'change':
      return (verdict.removed ? texts.isBack : texts.isChange)(verdict.revision + 1, listed(verdict.places))
    case 'otherKind':
      return <Bad sentences={[texts.otherKind(verdict.id)]} />
    case 'broken':
      return <Bad sentences={verdict.problems} />
  }
}

function Bad(props: { sentences: readonly string[] }) {
  return (
    <ul className="loss plain-list">
      {props.sentences.map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
    </ul>
  )
}
