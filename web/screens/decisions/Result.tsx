import type { DecisionRecord } from '../../../src/model/documents/records.ts'
import { seriesLetter } from '../../charts/DotPlot.tsx'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { OwnText } from '../../shell/fields/OwnText.tsx'
import { TableDownload } from '../../shell/TableDownload.tsx'
import { optionsTable } from '../../tables/answers.ts'
import { words } from '../../words/catalogue.ts'
import { type Explanation, explainChance, explainLead } from '../../words/explain.ts'
import { explainOption } from '../../words/explainAnswer.ts'
import { explainSpread } from '../../words/explainSpread.ts'
import { percent, points, signedPoints } from '../../words/format.ts'
import { optionName, verdict } from '../../words/verdict.ts'
import { OverrideNote } from '../overrides/OverrideNote.tsx'
import { Struck } from '../overrides/OwnMark.tsx'
import { AirLines } from './AirLines.tsx'
import { Block } from './Block.tsx'
import { JudgedBy } from './JudgedBy.tsx'

/** What was found: the record's own sentences, and the options with numbers that open. */
export function Result(props: { decision: DecisionRecord; revision: number }) {
  const { decision, revision } = props
  const { options, result, game, inputs } = decision.snapshot
  const texts = words().decisions
  const source = words().explain.kept(decision.name, revision)
  const found = verdict(result)
  return (
    <Block title={texts.result}>
      <p>
        <OwnText text={decision.result} />
      </p>
      <div className="scroll" tabIndex={0} role="region" aria-label={texts.options}>
        <table className="tide">
          <caption className="visually-hidden">{texts.options}</caption>
          <thead>
            <tr>
              <th scope="col">{texts.option}</th>
              <th scope="col" className="figure">
                {texts.points}
              </th>
              <th scope="col" className="figure">
                {texts.eightOfTen}
              </th>
              {result.belief && (
                <th scope="col" className="figure">
                  {texts.bestByBelief}
                </th>
              )}
            </tr>
          </thead>
          <tbody>
            {result.options.map((option, index) => (
              <tr key={option.id}>
                <th scope="row">
                  {seriesLetter(index)} {optionName(options, option.id)}
                  {option.id === decision.chosen ? texts.chosen : ''}
                </th>
                <td className="figure">
                  <Struck kept={decision.snapshot.overrides} option={option.id} />
                  <Opens explain={() => explainOption(option, options, source)} text={points(option.mean)} />
                </td>
                <td className="figure">
                  <Opens
                    explain={() => explainSpread(options.find(({ id }) => id === option.id)!, option, source)}
                    text={texts.range(points(option.p10), points(option.p90))}
                  />
                </td>
                {result.belief && (
                  <td className="figure">
                    <Opens
                      explain={() => explainChance(result, inputs, { game, options }, source)}
                      text={percent(result.belief.best[option.id] ?? 0)}
                    />
                  </td>
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <JudgedBy decision={decision} />
      <TableDownload title={texts.options} table={() => optionsTable(result, options, texts.options)} />
      <OverrideNote kept={decision.snapshot.overrides} documents={{ game, options }} />
      <AirLines snapshot={decision.snapshot} />
      {found?.second && (
        <p className="no-print small">
          {texts.chancesOpen}:{' '}
          <CameAbout explain={() => explainLead(result, options, found, source)}>{signedPoints(found.lead)}</CameAbout>
          {found.chance !== null && (
            <>
              {', '}
              <CameAbout explain={() => explainChance(result, inputs, { game, options }, source)}>
                {percent(found.chance)}
              </CameAbout>
            </>
          )}
        </p>
      )}
    </Block>
  )
}

/** A number that opens on the screen, and is plain on paper, where nothing opens. */
function Opens(props: { text: string; explain(): Explanation }) {
  return (
    <>
      <span className="only-paper">{props.text}</span>
      <span className="no-print">
        <CameAbout explain={props.explain}>{props.text}</CameAbout>
      </span>
    </>
  )
}
