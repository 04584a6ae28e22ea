import type { DecisionRecord } from '../../../src/model/documents/records.ts'
import { useStored } from '../../data/documents.ts'
import { Cautions } from '../../shell/Cautions.tsx'
import { OwnText } from '../../shell/fields/OwnText.tsx'
import { words } from '../../words/catalogue.ts'
import { day } from '../../words/format.ts'
import { optionName } from '../../words/verdict.ts'
import { OwnNumbersProvider } from '../overrides/OwnNumbersContext.tsx'
import { overridesSource } from '../overrides/words.ts'
import { Agreement } from './Agreement.tsx'
import { Believed } from './Believed.tsx'
import { Block, Lines } from './Block.tsx'
import { EventChecks } from './EventChecks.tsx'
import { Result } from './Result.tsx'
import './decision.css'

/** The record as it is read and printed: one or two pages, every block whole. */
export function DecisionPage(props: { decision: DecisionRecord; revision: number; dirty: boolean }) {
  const { decision, revision, dirty } = props
  const { game, options, overrides = [] } = decision.snapshot
  const texts = words().decisions
  return (
    <OwnNumbersProvider value={overridesSource(overrides, { game, options })}>
      <article className="decision sheet" aria-labelledby="decision-title">
        <header className="whole">
          <p className="label">{texts.label(game.name)}</p>
          <h1 id="decision-title">
            <OwnText text={decision.name} />
          </h1>
          <p className="decision-question">
            <OwnText text={decision.question} />
          </p>
          <p>
            {texts.decidedOn} <strong>{day(decision.decidedOn)}</strong>:{' '}
            <strong>{optionName(options, decision.chosen)}</strong>
            {overrides.length > 0 && <em> {words().overrides.contains(overrides.length)}</em>}
          </p>
        </header>
        <Result decision={decision} revision={revision} />
        <Assumptions decision={decision} />
        <Believed decision={decision} />
        <Lines title={texts.wouldChange} lines={decision.wouldChange} />
        <Lines title={texts.measureNext} lines={decision.measureNext} />
        <Cautions which={['lifted', 'spinning', 'air']} />
        <Objections decision={decision} />
        <EventChecks decision={decision} />
        <Agreement decision={decision} />
        <Footnote decision={decision} revision={revision} dirty={dirty} />
      </article>
    </OwnNumbersProvider>
  )
}

/** Records from before the trade-off's name was kept have it looked up, and its id until then. */
function Footnote(props: { decision: DecisionRecord; revision: number; dirty: boolean }) {
  const { comparison, snapshot } = props.decision
  const looked = useStored('comparison', snapshot.tradeOff === undefined ? comparison.id : null, comparison.revision)
  const name = snapshot.tradeOff ?? looked.data?.name ?? comparison.id
  return (
    <p className="soft small">{words().decisions.footnote(props.revision, props.dirty, name, comparison.revision)}</p>
  )
}

function Assumptions(props: { decision: DecisionRecord }) {
  const { assumptions } = props.decision
  const texts = words().decisions
  if (assumptions.length === 0) return null
  return (
    <Block title={texts.assumptions}>
      <ul>
        {assumptions.map(({ text, source }) => (
          <li key={text}>
            <OwnText text={text} />{' '}
            <span className="soft">({source ? <OwnText text={source} /> : texts.noSource})</span>
          </li>
        ))}
      </ul>
    </Block>
  )
}

function Objections(props: { decision: DecisionRecord }) {
  const { objections } = props.decision
  const texts = words().decisions
  if (objections.length === 0) return null
  return (
    <Block title={texts.objections}>
      <dl>
        {objections.map(({ who, text, answer }) => (
          <div key={text} className="whole">
            <dt>
              {who ? texts.objectionBy(who) : ''}
              <OwnText text={text} />
            </dt>
            <dd>{answer ? <OwnText text={answer} /> : <span className="soft">{texts.noAnswer}</span>}</dd>
          </div>
        ))}
      </dl>
    </Block>
  )
}
