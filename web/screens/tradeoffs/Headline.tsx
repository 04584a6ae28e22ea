import type { CompareReport } from '../../../src/model/compare/types.ts'
import type { ComparisonRecord } from '../../../src/model/documents/records.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { seriesLetter } from '../../charts/DotPlot.tsx'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { explainChance, explainLead } from '../../words/explain.ts'
import { explainAhead, explainOption } from '../../words/explainAnswer.ts'
import { percent, points, signedPoints } from '../../words/format.ts'
import { optionName, verdict } from '../../words/verdict.ts'

/** The answer, how sure it is, and the options side by side. */
export function Headline(props: {
  report: CompareReport
  record: ComparisonRecord
  documents: { game: Game; options: Option[] }
  source: string
  state: 'fresh' | 'computing' | 'stored'
  progress: { done: number; total: number } | null
}) {
  const { report, record, documents, source, state, progress } = props
  const { options } = documents
  const found = verdict(report)
  if (!found) return null
  return (
    <section className="sheet stack" aria-label="Answer">
      <p className="answer">
        {optionName(options, found.best)}
        {found.second && (
          <>
            :{' '}
            <CameAbout explain={() => explainLead(report, options, found, source)}>
              <span className="numeral">{signedPoints(found.lead)}</span>
            </CameAbout>{' '}
            points a match
          </>
        )}
      </p>
      {found.chance !== null && (
        <p>
          The better choice with a chance of{' '}
          <CameAbout explain={() => explainChance(report, record.inputs, documents, source)}>
            {percent(found.chance)}
          </CameAbout>{' '}
          over all that you believe.
        </p>
      )}
      <div className="scroll">
        <table className="tide">
          <caption className="visually-hidden">Options side by side</caption>
          <thead>
            <tr>
              <th scope="col">Option</th>
              <th scope="col" className="figure">
                Points
              </th>
              <th scope="col" className="figure">
                8 of 10 matches
              </th>
              <th scope="col" className="figure">
                Match to match, sd
              </th>
              <th scope="col" className="figure">
                Ahead in a match
              </th>
              {report.belief && (
                <th scope="col" className="figure">
                  Best, by belief
                </th>
              )}
            </tr>
          </thead>
          <tbody>
            {report.options.map((option, index) => {
              const other = option.id === found.best ? found.second : found.best
              return (
                <tr key={option.id}>
                  <th scope="row">
                    {seriesLetter(index)} {optionName(options, option.id)}
                  </th>
                  <td className="figure">
                    <CameAbout explain={() => explainOption(option, options, source)}>{points(option.mean)}</CameAbout>
                  </td>
                  <td className="figure">
                    {points(option.p10)} to {points(option.p90)}
                  </td>
                  <td className="figure">{points(option.sd)}</td>
                  <td className="figure">
                    {other ? (
                      <CameAbout explain={() => explainAhead(report, [option.id, other], options, source)}>
                        {percent(report.beats[option.id]?.[other] ?? 0)}
                      </CameAbout>
                    ) : (
                      '–'
                    )}
                  </td>
                  {report.belief && <td className="figure">{percent(report.belief.best[option.id] ?? 0)}</td>}
                </tr>
              )
            })}
          </tbody>
        </table>
      </div>
      <p className="soft small" role="status">
        {state === 'fresh'
          ? 'Computed in your browser from the documents as they stand here.'
          : state === 'stored'
            ? 'This is the stored result.'
            : `Computing in your browser${progress ? `: ${percent(progress.done / progress.total)}` : ''} … Shown is the last result.`}
      </p>
      <p className="soft small">
        For one robot, ‘when it pays’ can not be worse than leaving the endgame out: whether to leave it out is a
        question between two robots, of which the one without is better at something else.
      </p>
    </section>
  )
}
