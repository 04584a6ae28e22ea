import type { DecisionRecord } from '../../../src/model/documents/records.ts'
import { words } from '../../words/catalogue.ts'
import { FieldTable } from '../tradeoffs/objective/FieldTable.tsx'
import { fieldWords } from '../tradeoffs/objective/fieldWords.ts'

/** What the decision was judged by where that is not points alone: the objective, who played, and what came of it. */
export function JudgedBy(props: { decision: DecisionRecord }) {
  const { game, options, result, objective, field } = props.decision.snapshot
  const text = words().objective
  if (!objective || objective === 'points' || !field || !result.field) return null
  return (
    <>
      <p>
        {text.record.title}: <strong>{text.names[objective]}</strong>. {fieldWords(field, result.field)}
      </p>
      <FieldTable game={game} options={options} report={result.field} />
      <p className="soft small">{text.errors}</p>
    </>
  )
}
