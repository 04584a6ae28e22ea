import { Button, Progress } from '@mantine/core'
import { useMemo, useState } from 'react'
import type { Turn } from '../../../src/model/compare/index.ts'
import type { CompareReport, Input } from '../../../src/model/compare/types.ts'
import type { ComparisonRecord } from '../../../src/model/documents/records.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { signedCell } from '../../charts/cells.ts'
import { Figure } from '../../charts/Figure.tsx'
import { Measured } from '../../charts/Measured.tsx'
import { SwingChart } from '../../charts/SwingChart.tsx'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { words as texts } from '../../words/catalogue.ts'
import { explainSwing } from '../../words/explainAnswer.ts'
import { signedPoints } from '../../words/format.ts'
import { inputWords } from '../../words/inputs.ts'
import { isNothing, optionName, verdict } from '../../words/verdict.ts'
import { useModel } from '../../worker/useModel.ts'
import { explainIdle } from './explain.ts'
import { idleWords, turnWords } from './turnWords.ts'
import { useSeen } from './useSeen.ts'
import { useTurns } from './useTurns.ts'

interface Documents {
  game: Game
  options: Option[]
}

/** What need not be argued about comes first; then what turns the answer alone, and how far each unknown moves it. */
export function Swings(props: {
  report: CompareReport
  record: ComparisonRecord
  documents: Documents
  source: string
  /** The headline is computed: what is looked for here may follow. */
  ready: boolean
}) {
  const { report, record, documents } = props
  const { inputs } = record
  const request = useMemo(() => ({ ...documents, inputs }), [documents, inputs])
  const [section, seen] = useSeen<HTMLElement>(props.ready)
  const [stopped, setStopped] = useState(false)
  const { turns, error } = useTurns(request, props.ready && seen && !stopped)
  if (inputs.length === 0 || report.options.length < 2) return null
  const text = texts().turns.arguments
  const known = turns.flatMap((turn, index) => (turn ? [{ turn, input: inputs[index]! }] : []))
  return (
    <section ref={section} className="sheet stack" aria-labelledby="swing-title">
      <h2 id="swing-title">{text.title}</h2>
      {error && <p role="alert">{error.message}</p>}
      {known.length < inputs.length && !error && (
        <Looking known={known.length} all={inputs.length} stopped={stopped} onStop={setStopped} />
      )}
      <Idle known={known} all={inputs.length} documents={documents} source={props.source} />
      <Turning known={known} complete={known.length === inputs.length} documents={documents} />
      <Bars {...props} />
    </section>
  )
}

/** How far the search is, and that it can be stopped; what it has found by then stays. */
function Looking(props: { known: number; all: number; stopped: boolean; onStop(stopped: boolean): void }) {
  const { known, all, stopped } = props
  const text = texts().turns.arguments
  return (
    <>
      <div className="stack no-print">
        <p role="status" className="soft">
          {stopped ? text.stopped(known, all) : text.looking(known, all)}
        </p>
        {!stopped && <Progress value={(known / all) * 100} color="var(--deep)" aria-label={text.progress} />}
        <div>
          <Button size="compact-md" variant="default" onClick={() => props.onStop(!stopped)}>
            {stopped ? text.goOn : text.stop}
          </Button>
        </div>
      </div>
      <p className="only-print">{text.printed(known, all)}</p>
    </>
  )
}

interface Known {
  turn: Turn
  input: Input
}

function Idle(props: { known: Known[]; all: number; documents: Documents; source: string }) {
  const { known, all, documents, source } = props
  const text = texts().turns.arguments
  const idle = known.filter(({ turn }) => turn.crossings.length === 0)
  if (idle.length === 0) return known.length === all ? <p>{text.noneIdle(all)}</p> : null
  return (
    <div className="stack">
      <h3>{text.idle}</h3>
      <p>{text.idleHow}</p>
      <ul className="facts">
        {idle.map(({ turn, input }) => (
          <li key={input.id}>{idleWords(turn, input, documents)}</li>
        ))}
      </ul>
      {known.length === all && (
        <p>
          <CameAbout explain={() => explainIdle(known, documents, source)}>{texts().explain.opened}</CameAbout>
        </p>
      )}
    </div>
  )
}

function Turning(props: { known: Known[]; complete: boolean; documents: Documents }) {
  const { known, documents } = props
  const text = texts().turns.arguments
  const turning = known.filter(({ turn }) => turn.crossings.length > 0)
  if (turning.length === 0) return props.complete ? <p>{text.noneTurning}</p> : null
  return (
    <div className="stack">
      <h3>{text.turning}</h3>
      <ul className="facts">
        {turning.map(({ turn, input }) => (
          <li key={input.id}>{turnWords(turn, input, documents)[0]}</li>
        ))}
      </ul>
    </div>
  )
}

function Bars(props: { report: CompareReport; record: ComparisonRecord; documents: Documents; source: string }) {
  const { report, record, documents, source } = props
  const { options } = documents
  const text = texts().turns.arguments
  const found = verdict(report)
  const atLikely = useModel(
    'likely',
    useMemo(() => ({ ...documents, inputs: record.inputs }), [documents, record.inputs]),
  )
  const bars = useMemo(
    () =>
      (report.swing ?? []).flatMap(({ input: id, low, high, difference }) => {
        const input = record.inputs.find((entry) => entry.id === id)
        if (!input) return []
        const { name, say } = inputWords(input, documents)
        return [{ id, name, low: say(low), high: say(high), difference }]
      }),
    [report.swing, record.inputs, documents],
  )
  if (!found?.second || bars.length === 0) return null
  const index = (id: string | null) => options.findIndex((option) => option.id === id)
  const likely = atLikely.data && atLikely.data[index(found.best)]! - atLikely.data[index(found.second)]!
  const base = likely ?? found.lead
  return (
    <>
      <p>
        {text.swingHow(optionName(options, found.best))}{' '}
        {likely !== undefined &&
          !isNothing(likely - found.lead) &&
          text.otherwise(signedPoints(likely), signedPoints(found.lead))}
      </p>
      <Figure
        title={text.figure}
        hideTitle
        table={{
          head: [text.unknown, text.low, text.atLow, text.high, text.atHigh],
          rows: bars.map((bar) => [
            bar.name,
            bar.low,
            signedCell(bar.difference[0]),
            bar.high,
            signedCell(bar.difference[1]),
          ]),
        }}
      >
        <Measured drawn="swing" data={bars}>
          {(width) => <SwingChart bars={bars} base={base} width={width} ahead={text.ahead} behind={text.behind} />}
        </Measured>
      </Figure>
      <p>
        <CameAbout explain={() => explainSwing(bars, { lead: base, found, options, source })}>
          {texts().explain.opened}
        </CameAbout>
      </p>
    </>
  )
}
