import { Suspense, useMemo } from 'react'
import { Link } from 'wouter'
import type { CompareReport, CompareRequest } from '../../../src/model/compare/types.ts'
import type { DecisionRecord } from '../../../src/model/documents/records.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import type { DocumentSummary } from '../../../src/store/types.ts'
import { useStored } from '../../data/documents.ts'
import { languageOf } from '../../data/textLanguage.ts'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { screen } from '../../shell/screen.ts'
import { Loading, Trouble } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { explainChance, explainLead } from '../../words/explain.ts'
import { percent, plain, points, signedPoints } from '../../words/format.ts'
import { isLevel, optionName, turning, type Verdict, verdict } from '../../words/verdict.ts'
import { useModel } from '../../worker/useModel.ts'
import { Matches } from './Matches.tsx'

// Few answers rest on one, so that the first page need not wait for it.
const OverrideNote = screen<{
  kept: DecisionRecord['snapshot']['overrides']
  documents: { game: Game; options: Option[] }
}>(async () => ({ default: (await import('../overrides/OverrideNote.tsx')).OverrideNote }))

/** The season's open question, its stored answer, and the same computed anew in this browser. */
export function OpenQuestion(props: { decision: DocumentSummary }) {
  const texts = words().start
  const stored = useStored('decision', props.decision.id)
  if (stored.isPending) return <Loading what={texts.what} />
  if (stored.error) return <Trouble title={texts.notLoaded} error={stored.error} retry={() => void stored.refetch()} />
  return <Answer decision={stored.data.body} revision={stored.data.revision} lang={languageOf(stored.data)} />
}

function Answer(props: { decision: DecisionRecord; revision: number; lang: string | undefined }) {
  const { decision } = props
  const { game, options, inputs, result } = decision.snapshot
  const texts = words().start.question
  const breakEven = inputs.find(({ id }) => id === result.breakEven?.input)
  const request = useMemo(
    (): CompareRequest => ({ game, options, inputs, ...(breakEven ? { breakEven: breakEven.id } : {}) }),
    [game, options, inputs, breakEven],
  )
  const anew = useModel('compare', { request })
  const report = anew.data ? { ...anew.data, belief: result.belief } : result
  const found = verdict(report)
  if (!found) return null
  const source = texts.source(decision.name, props.revision, decision.comparison.id, decision.comparison.revision)
  const [before, after] = isLevel(found)
    ? texts.level(optionName(options, found.best), optionName(options, found.second ?? ''))
    : texts.answer(decision.chosen === found.best ? decision.name : optionName(options, found.best))
  return (
    <section className="sheet question" aria-labelledby="question">
      <div className="stack">
        <p className="label">{texts.label(game.name)}</p>
        <h2 id="question" lang={props.lang}>
          {decision.question}
        </h2>
        <p className="answer">
          {before}
          <CameAbout explain={() => explainLead(report, options, found, source)}>
            <span className="numeral">{signedPoints(found.lead)}</span>
          </CameAbout>
          {after}
        </p>
        {(decision.snapshot.overrides ?? []).length > 0 && (
          <Suspense fallback={null}>
            <OverrideNote kept={decision.snapshot.overrides} documents={{ game, options }} />
          </Suspense>
        )}
        <Facts decision={decision} report={report} found={found} source={source} />
        <p className="soft small" role="status">
          {anew.error
            ? texts.failed(anew.error.message)
            : anew.data
              ? agreement(anew.data.options, result.options)
              : texts.computing}
        </p>
        <div className="row ways">
          <Link href={`/trade-offs/${decision.comparison.id}`}>{texts.tradeOff}</Link>
          <Link href="/designs">{texts.designs}</Link>
          <Link href={`/decisions/${decision.id}`}>{texts.decision}</Link>
        </div>
      </div>
      <Matches decision={decision} />
    </section>
  )
}

/** How sure the answer is, and where it turns. */
function Facts(props: { decision: DecisionRecord; report: CompareReport; found: Verdict; source: string }) {
  const { report, found, source } = props
  const { game, options, inputs, result } = props.decision.snapshot
  const documents = { game, options }
  const texts = words().start.question
  const breakEven = inputs.find(({ id }) => id === result.breakEven?.input)
  const [before, after] = texts.chance
  return (
    <ul className="facts">
      {found.chance !== null && (
        <li>
          {before}
          <CameAbout explain={() => explainChance(report, inputs, documents, source)}>
            {percent(found.chance)}
          </CameAbout>
          {after}
        </li>
      )}
      {found.matches !== null && found.second && (
        <li>{texts.matches(optionName(options, found.second), percent(found.matches))}</li>
      )}
      {breakEven && turning(report, breakEven, documents).map((sentence) => <li key={sentence}>{sentence}</li>)}
    </ul>
  )
}

function agreement(
  now: readonly { id: string; mean: number }[],
  before: readonly { id: string; mean: number }[],
): string {
  const texts = words().start.question
  const most = Math.max(
    ...now.map(({ id, mean }) => Math.abs(mean - (before.find((other) => other.id === id)?.mean ?? mean))),
  )
  return most < 0.05 ? texts.same(plain(0.1)) : texts.differs(points(most))
}
