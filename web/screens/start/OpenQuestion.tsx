import { useMemo } from 'react'
import { Link } from 'wouter'
import type { CompareRequest } from '../../../src/model/compare/types.ts'
import type { DecisionRecord } from '../../../src/model/documents/records.ts'
import type { DocumentSummary } from '../../../src/store/types.ts'
import { DotPlot } from '../../charts/DotPlot.tsx'
import { Figure } from '../../charts/Figure.tsx'
import { Measured } from '../../charts/Measured.tsx'
import { quantileDots } from '../../charts/quantileDots.ts'
import { useStored } from '../../data/documents.ts'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { Loading, Trouble } from '../../shell/states.tsx'
import { explainChance, explainLead } from '../../words/explain.ts'
import { percent, points, signedPoints } from '../../words/format.ts'
import { optionName, turning, verdict } from '../../words/verdict.ts'
import { useModel } from '../../worker/useModel.ts'

/** The season's open question, its stored answer, and the same computed anew in this browser. */
export function OpenQuestion(props: { decision: DocumentSummary }) {
  const stored = useStored('decision', props.decision.id)
  if (stored.isPending) return <Loading what="the open question" />
  if (stored.error)
    return (
      <Trouble title="The open question could not be loaded" error={stored.error} retry={() => void stored.refetch()} />
    )
  return <Answer decision={stored.data.body} revision={stored.data.revision} />
}

function Answer(props: { decision: DecisionRecord; revision: number }) {
  const { decision } = props
  const { game, options, inputs, result } = decision.snapshot
  const breakEven = inputs.find(({ id }) => id === result.breakEven?.input)
  const request = useMemo(
    (): CompareRequest => ({ game, options, inputs, ...(breakEven ? { breakEven: breakEven.id } : {}) }),
    [game, options, inputs, breakEven],
  )
  const anew = useModel('compare', { request })
  const report = anew.data ? { ...anew.data, belief: result.belief } : result
  const found = verdict(report)
  if (!found) return null
  const source = `From the decision record ‘${decision.name}’, revision ${props.revision}; comparison ${decision.comparison.id}, revision ${decision.comparison.revision}.`
  const documents = { game, options }
  return (
    <section className="sheet question" aria-labelledby="question">
      <div className="stack">
        <p className="label">Open question · {game.name}</p>
        <h2 id="question">{decision.question}</h2>
        <p className="answer">
          {decision.chosen === found.best ? decision.name : optionName(options, found.best)}:{' '}
          <CameAbout explain={() => explainLead(report, options, found, source)}>
            <span className="numeral">{signedPoints(found.lead)}</span>
          </CameAbout>{' '}
          points a match
        </p>
        <ul className="facts">
          {found.chance !== null && (
            <li>
              It is the better choice with a chance of{' '}
              <CameAbout explain={() => explainChance(report, inputs, documents, source)}>
                {percent(found.chance)}
              </CameAbout>{' '}
              over all that you believe.
            </li>
          )}
          {found.matches !== null && found.second && (
            <li>
              In single matches it scores more than ‘{optionName(options, found.second)}’ {percent(found.matches)} of
              the time.
            </li>
          )}
          {breakEven && turning(report, breakEven, documents).map((sentence) => <li key={sentence}>{sentence}</li>)}
        </ul>
        <p className="soft small" role="status">
          {anew.error
            ? `Could not be computed anew here: ${anew.error.message} Shown is the stored answer.`
            : anew.data
              ? agreement(anew.data.options, result.options)
              : 'The stored answer; computing it anew in your browser …'}
        </p>
        <div className="row ways">
          <Link href={`/trade-offs/${decision.comparison.id}`}>See the trade-off</Link>
          <Link href="/designs">Look at the designs</Link>
          <Link href={`/decisions/${decision.id}`}>Read the decision record</Link>
        </div>
      </div>
      <Matches decision={decision} />
    </section>
  )
}

function agreement(
  now: readonly { id: string; mean: number }[],
  before: readonly { id: string; mean: number }[],
): string {
  const most = Math.max(
    ...now.map(({ id, mean }) => Math.abs(mean - (before.find((other) => other.id === id)?.mean ?? mean))),
  )
  return most < 0.05
    ? 'Computed anew in your browser just now: the same as the stored answer to 0.1 points.'
    : `Computed anew in your browser just now; the stored answer differed by up to ${points(most)} points.`
}

/** Twenty equally likely matches per option. */
function Matches(props: { decision: DecisionRecord }) {
  const { game, options } = props.decision.snapshot
  const [first, second] = options
  const a = useModel('report', first ? { game, option: first, with: [] } : null)
  const b = useModel('report', second ? { game, option: second, with: [] } : null)
  const rows = [
    { option: first, report: a.data },
    { option: second, report: b.data },
  ].flatMap(({ option, report }) =>
    option && report
      ? [{ id: option.id, name: option.name, distribution: report.distribution, mean: report.expected.total }]
      : [],
  )
  if (a.error) return <p className="soft">{a.error.message}</p>
  if (rows.length === 0) return <Loading what="the picture of matches" />
  return (
    <div>
      <Figure
        title="Twenty equally likely matches of each"
        table={{
          head: ['Match of 20', ...rows.map((row) => row.name)],
          rows: Array.from({ length: 20 }, (_, index) => [
            index + 1,
            ...rows.map((row) => points(quantileDots(row.distribution)[index]!)),
          ]),
        }}
      >
        <Measured>{(width) => <DotPlot rows={rows} width={width} threshold={null} />}</Measured>
      </Figure>
      <p className="soft small">
        Each dot is one of 20 equally likely matches; the triangle is the mean. Points of this robot alone.
      </p>
    </div>
  )
}
