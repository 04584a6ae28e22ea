import type { DecisionRecord } from '../../../src/model/documents/records.ts'
import { seriesLetter } from '../../charts/DotPlot.tsx'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { TableDownload } from '../../shell/TableDownload.tsx'
import { words } from '../../words/catalogue.ts'
import { explainOption } from '../../words/explainAnswer.ts'
import { points, signedPoints } from '../../words/format.ts'
import { optionName } from '../../words/verdict.ts'
import type { Change, Means, Moved } from './changes.ts'
import { explainNow } from './explainNow.ts'
import { movedTable } from './movedTable.ts'

/** What each document's change contributes to each option and to the lead of what was chosen; the lines add up. */
export function MovedTable(props: {
  decision: DecisionRecord
  revision: number
  changes: readonly Change[]
  moved: Moved
}) {
  const { decision, changes, moved } = props
  const { options, result } = decision.snapshot
  const texts = words().decisions.again
  const ids = result.options.map(({ id }) => id)
  const others = ids.filter((id) => id !== decision.chosen)
  // Against the one that was the best of the others then, so that the lines add up.
  const rival = [...others].sort((a, b) => moved.written[b]! - moved.written[a]!)[0]
  const cells = (means: Means | null) => (
    <>
      {ids.map((id) => (
        <td key={id} className="figure">
          {means ? signedPoints(means[id]!) : texts.notAlone}
        </td>
      ))}
      {rival !== undefined && (
        <td className="figure">{means ? signedPoints(means[decision.chosen]! - means[rival]!) : texts.notAlone}</td>
      )}
    </>
  )
  const kept = words().explain.kept(decision.name, props.revision)
  const newest = changes.map(({ kind, name, revision }) => texts.came.revision(texts.kinds[kind](name), revision))
  const source = `${kept} ${texts.came.source(newest.length > 0 ? newest.join('; ') : texts.came.unchanged)}`
  const came = (of: { option: string; rival?: string }) => explainNow(decision, { changes, moved, source, ...of })
  const moves = (means: Means) => ids.some((id) => Math.abs(means[id]!) >= 0.005)
  return (
    <>
      <div className="scroll" tabIndex={0} role="region" aria-label={texts.caption}>
        <table className="tide moved">
          <caption>{texts.caption}</caption>
          <thead>
            <tr>
              <th scope="col">{texts.what}</th>
              {ids.map((id, index) => (
                <th key={id} scope="col" className="figure">
                  {seriesLetter(index)} {optionName(options, id)}
                </th>
              ))}
              {rival !== undefined && (
                <th scope="col" className="figure">
                  {texts.lead}
                </th>
              )}
            </tr>
          </thead>
          <tbody>
            <tr>
              <th scope="row">{texts.written}</th>
              {result.options.map((option) => (
                <td key={option.id} className="figure">
                  <CameAbout explain={() => explainOption(option, options, kept)}>
                    {points(moved.written[option.id]!)}
                  </CameAbout>
                </td>
              ))}
              {rival !== undefined && (
                <td className="figure">{signedPoints(moved.written[decision.chosen]! - moved.written[rival]!)}</td>
              )}
            </tr>
            {moves(moved.program) && (
              <tr>
                <th scope="row">{texts.program}</th>
                {cells(moved.program)}
              </tr>
            )}
            {changes.map((change, index) => (
              <tr key={`${change.kind} ${change.id}`}>
                <th scope="row">
                  {texts.kinds[change.kind](change.name)}
                  <div className="soft small">{texts.revision(change.revision)}</div>
                </th>
                {cells(moved.alone[index] ?? null)}
              </tr>
            ))}
            {changes.length > 1 && (
              <tr>
                <th scope="row">{texts.together}</th>
                {cells(moved.together)}
              </tr>
            )}
            <tr className="total">
              <th scope="row">{texts.now}</th>
              {ids.map((id) => (
                <td key={id} className="figure">
                  <CameAbout explain={() => came({ option: id })}>{points(moved.now[id]!)}</CameAbout>
                </td>
              ))}
              {rival !== undefined && (
                <td className="figure">
                  <CameAbout explain={() => came({ option: decision.chosen, rival })}>
                    {signedPoints(moved.now[decision.chosen]! - moved.now[rival]!)}
                  </CameAbout>
                </td>
              )}
            </tr>
          </tbody>
        </table>
      </div>
      <TableDownload title={texts.caption} table={() => movedTable(decision, changes, moved)} />
      {changes.length > 1 && <p className="soft small">{texts.order}</p>}
      {moved.alone.some((means) => means === null) && <p className="soft small">{texts.notAloneWhy}</p>}
    </>
  )
}
