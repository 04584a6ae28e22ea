import type { ReactNode } from 'react'
import type { DecisionRecord } from '../../../src/model/documents/records.ts'
import { seriesLetter } from '../../charts/DotPlot.tsx'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { Cautions } from '../../shell/Cautions.tsx'
import { words } from '../../words/catalogue.ts'
import { explainChance, explainLead } from '../../words/explain.ts'
import { explainOption } from '../../words/explainAnswer.ts'
import { day, percent, points, signedPoints } from '../../words/format.ts'
import { inputWords } from '../../words/inputs.ts'
import { optionName, verdict } from '../../words/verdict.ts'
import './decision.css'

/** The record as it is read and printed: one or two pages, every block whole. */
export function DecisionPage(props: { decision: DecisionRecord; revision: number; dirty: boolean }) {
  const { decision } = props
  const { game, options, inputs, result } = decision.snapshot
  const documents = { game, options }
  return (
    <article className="decision sheet" aria-labelledby="decision-title">
      <header className="whole">
        <p className="label">Decision record · {game.name}</p>
        <h1 id="decision-title">{decision.name}</h1>
        <p className="decision-question">{decision.question}</p>
        <p>
          Decided on <strong>{day(decision.decidedOn)}</strong>: <strong>{optionName(options, decision.chosen)}</strong>
        </p>
      </header>
      <Block title="Result">
        <p>{decision.result}</p>
        <div className="scroll">
          <table className="tide">
            <caption className="visually-hidden">Options</caption>
            <thead>
              <tr>
                <th scope="col">Option</th>
                <th scope="col" className="figure">
                  Points
                </th>
                <th scope="col" className="figure">
                  8 of 10 matches
                </th>
                {result.belief && (
                  <th scope="col" className="figure">
                    Best, by belief
                  </th>
                )}
              </tr>
            </thead>
            <tbody>
              {result.options.map((option, index) => (
                <tr key={option.id}>
                  <th scope="row">
                    {seriesLetter(index)} {optionName(options, option.id)}
                    {option.id === decision.chosen ? ' (chosen)' : ''}
                  </th>
                  <td className="figure">{points(option.mean)}</td>
                  <td className="figure">
                    {points(option.p10)} to {points(option.p90)}
                  </td>
                  {result.belief && <td className="figure">{percent(result.belief.best[option.id] ?? 0)}</td>}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
        <Explained decision={decision} revision={props.revision} />
      </Block>
      {decision.assumptions.length > 0 && (
        <Block title="Assumptions">
          <ul>
            {decision.assumptions.map(({ text, source }) => (
              <li key={text}>
                {text} {source && <span className="soft">({source})</span>}
              </li>
            ))}
          </ul>
        </Block>
      )}
      {inputs.length > 0 && (
        <Block title="What was believed">
          <div className="scroll">
            <table className="tide">
              <caption className="visually-hidden">Unknowns and what was believed about them</caption>
              <thead>
                <tr>
                  <th scope="col">Unknown</th>
                  <th scope="col" className="figure">
                    Low
                  </th>
                  <th scope="col" className="figure">
                    Likely
                  </th>
                  <th scope="col" className="figure">
                    High
                  </th>
                </tr>
              </thead>
              <tbody>
                {inputs.map((input) => {
                  const words = inputWords(input, documents)
                  return (
                    <tr key={input.id}>
                      <th scope="row">{words.name}</th>
                      <td className="figure">{words.say(input.low)}</td>
                      <td className="figure">{words.say(input.likely)}</td>
                      <td className="figure">{words.say(input.high)}</td>
                    </tr>
                  )
                })}
              </tbody>
            </table>
          </div>
        </Block>
      )}
      <Lines title="What would change it" lines={decision.wouldChange} />
      <Lines title="What to measure next" lines={decision.measureNext} />
      <Cautions which={['lifted', 'spinning', 'air']} />
      {decision.objections.length > 0 && (
        <Block title="Objections">
          <dl>
            {decision.objections.map(({ text, answer }) => (
              <div key={text} className="whole">
                <dt>{text}</dt>
                <dd>{answer}</dd>
              </div>
            ))}
          </dl>
        </Block>
      )}
      {decision.checkAtEvent && (
        <Block title="How it will be checked at the event">
          <p>{decision.checkAtEvent}</p>
        </Block>
      )}
      <Block title="Agreed">
        {decision.agreed.length > 0 ? (
          <ul className="agreed">
            {decision.agreed.map(({ who, on }) => (
              <li key={who}>
                {who}, {day(on)}
              </li>
            ))}
          </ul>
        ) : (
          <p className="soft">Nobody yet.</p>
        )}
      </Block>
      <p className="soft small">
        Revision {props.revision}
        {props.dirty ? ' with unsaved edits' : ''}. Computed from comparison {decision.comparison.id}, revision{' '}
        {decision.comparison.revision}; the inputs are kept with this record.
      </p>
    </article>
  )
}

/** Each number of the result opens, on the screen; on paper the record's own words say what it was computed from. */
function Explained(props: { decision: DecisionRecord; revision: number }) {
  const { decision, revision } = props
  const { game, options, inputs, result } = decision.snapshot
  const found = verdict(result)
  const text = words().explain
  const source = text.kept(decision.name, revision)
  return (
    <p className="no-print small">
      {text.opened}:{' '}
      {result.options.map((option, index) => (
        <span key={option.id}>
          <CameAbout explain={() => explainOption(option, options, source)}>
            {seriesLetter(index)} {points(option.mean)}
          </CameAbout>{' '}
        </span>
      ))}
      {found?.second && (
        <CameAbout explain={() => explainLead(result, options, found, source)}>{signedPoints(found.lead)}</CameAbout>
      )}{' '}
      {found?.chance !== null && found !== null && (
        <CameAbout explain={() => explainChance(result, inputs, { game, options }, source)}>
          {percent(found.chance)}
        </CameAbout>
      )}
    </p>
  )
}

function Block(props: { title: string; children: ReactNode }) {
  return (
    <section className="whole">
      <h2>{props.title}</h2>
      {props.children}
    </section>
  )
}

function Lines(props: { title: string; lines: string[] }) {
  if (props.lines.length === 0) return null
  return (
    <Block title={props.title}>
      <ul>
        {props.lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </Block>
  )
}
