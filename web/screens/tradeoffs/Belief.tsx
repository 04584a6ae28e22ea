import { Button, Progress } from '@mantine/core'
import { useEffect, useRef, useState } from 'react'
import type { BeliefReport, CompareRequest } from '../../../src/model/compare/types.ts'
import type { ComparisonRecord } from '../../../src/model/documents/records.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { percentCell, pointsCell } from '../../charts/cells.ts'
import { DataTable, Figure } from '../../charts/Figure.tsx'
import { Measured } from '../../charts/Measured.tsx'
import { ValueBars } from '../../charts/ValueBars.tsx'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { words as texts } from '../../words/catalogue.ts'
import { decimal } from '../../words/decimal.ts'
import { explainKnowing, explainMeasuring } from '../../words/explainAnswer.ts'
import { listed, percent, plain, points, signedPoints } from '../../words/format.ts'
import { inputWords } from '../../words/inputs.ts'
import { optionName } from '../../words/verdict.ts'
import { computeBelief } from '../../worker/belief.ts'
import { explainRegret } from './explain.ts'
import { nextWords } from './next.ts'

/** Chances, regret, and what it would be worth to know more: long work, with progress, to be stopped. */
export function Belief(props: {
  request: CompareRequest
  belief: BeliefReport | null
  record: ComparisonRecord
  documents: { game: Game; options: Option[] }
  source: string
  onComputed(report: BeliefReport): void
}) {
  const { belief, record, documents } = props
  const text = texts().tradeoffs.belief
  const [share, setShare] = useState<number | null>(null)
  const [trouble, setTrouble] = useState<string | null>(null)
  const stop = useRef<AbortController | null>(null)
  useEffect(() => () => stop.current?.abort(), [])
  const start = async () => {
    const controller = new AbortController()
    stop.current = controller
    setShare(0)
    setTrouble(null)
    try {
      props.onComputed(await computeBelief(props.request, { signal: controller.signal, progress: setShare }))
    } catch (error) {
      if (!controller.signal.aborted) setTrouble((error as Error).message)
      else setTrouble(belief ? text.stoppedLast : text.stopped)
    } finally {
      setShare(null)
    }
  }
  return (
    <section className="sheet stack" aria-labelledby="belief-title">
      <div className="row spread">
        <h2 id="belief-title">{text.title}</h2>
        {share === null ? (
          <Button variant="default" onClick={() => void start()}>
            {belief ? text.again : text.compute}
          </Button>
        ) : (
          <Button variant="default" onClick={() => stop.current?.abort()}>
            {text.stop}
          </Button>
        )}
      </div>
      {share !== null && (
        <div role="status">
          <p>{text.drawing(percent(share))}</p>
          <Progress value={share * 100} color="var(--deep)" aria-label={text.progress} />
        </div>
      )}
      {trouble && <p role="status">{trouble}</p>}
      {belief ? (
        <Known belief={belief} record={record} documents={documents} source={props.source} />
      ) : (
        share === null && <p>{text.none}</p>
      )}
    </section>
  )
}

/** A standard error with a digit more than the points: at one digit it would mostly read as none. */
const errorWords = (error: number): string => (error < 0.005 ? points(0) : plain(error, 2))

function Known(props: {
  belief: BeliefReport
  record: ComparisonRecord
  documents: { game: Game; options: Option[] }
  source: string
}) {
  const { belief, record, documents, source } = props
  const { options } = documents
  const text = texts().tradeoffs.belief
  const worth = record.inputs
    .map((input) => ({
      input,
      words: inputWords(input, documents),
      ...(belief.evppi[input.id] ?? { value: 0, standardError: 0 }),
    }))
    .sort((a, b) => b.value - a.value)
  const next = nextWords(belief, record.inputs, documents)
  const learnable = record.inputs.filter(({ id }) => (belief.evsi[id]?.length ?? 0) > 0)
  return (
    <div className="stack wide">
      <div className="columns">
        <Figure
          title={text.best}
          table={{
            head: [text.option, text.chance, text.lost],
            rows: options.map(({ id, name }) => [
              name,
              percentCell(belief.best[id] ?? 0),
              pointsCell(
                belief.regret[id] ?? 0,
                <CameAbout explain={() => explainRegret(belief, id, record.inputs, { documents, source })}>
                  {text.points(points(belief.regret[id] ?? 0))}
                </CameAbout>,
              ),
            ]),
          }}
        >
          <Measured drawn="chances" data={belief}>
            {(width) => (
              <ValueBars
                width={width}
                most={1}
                label={text.best}
                bars={options.map(({ id }) => ({
                  id,
                  name: optionName(options, id),
                  value: belief.best[id] ?? 0,
                  text: percent(belief.best[id] ?? 0),
                }))}
              />
            )}
          </Measured>
        </Figure>
        <Figure
          title={text.knowing}
          table={{
            head: [text.unknown, text.perMatch, text.error],
            rows: worth.map(({ words, value, standardError }) => [
              words.name,
              pointsCell(
                value,
                <CameAbout explain={() => explainKnowing(belief, record.inputs, documents, source)}>
                  {points(value)}
                </CameAbout>,
              ),
              pointsCell(standardError),
            ]),
          }}
        >
          <Measured drawn="knowing" data={belief}>
            {(width) => (
              <ValueBars
                width={width}
                label={text.brings}
                bars={worth.map(({ input, words, value, standardError }) => ({
                  id: input.id,
                  name: words.name,
                  value,
                  error: standardError,
                  text: points(value),
                }))}
              />
            )}
          </Measured>
        </Figure>
      </div>
      <p>
        {text.everythingBefore}{' '}
        <CameAbout explain={() => explainKnowing(belief, record.inputs, documents, source)}>
          {text.pointsPerMatch(points(belief.evpi.value))}
        </CameAbout>{' '}
        {text.everythingAfter(errorWords(belief.evpi.standardError))}
      </p>
      <ul className="facts">
        {next.map((sentence, index) => (
          <li key={sentence}>{index === 0 ? <strong>{sentence}</strong> : sentence}</li>
        ))}
        {learnable.length > 0 && (
          <li className="no-print">
            <CameAbout explain={() => explainMeasuring(belief, learnable, documents, { result: next[0]!, source })}>
              {texts().explain.openedOf(texts().explainNumbers.measuring.title)}
            </CameAbout>
          </li>
        )}
      </ul>
      {learnable.length > 0 && (
        <details className="unopened">
          <summary>{text.learn}</summary>
          <div className="scroll" tabIndex={0} role="region" aria-label={text.learnTable}>
            <DataTable
              caption={text.learnTable}
              table={{
                head: [text.unknown, ...(belief.evsi[learnable[0]!.id] ?? []).map(([count]) => String(count))],
                rows: learnable.map((input) => [
                  inputWords(input, documents).name,
                  ...(belief.evsi[input.id] ?? []).map(([, value]) => pointsCell(value)),
                ]),
              }}
            />
          </div>
        </details>
      )}
      <p className="soft small">{text.grid(decimal(belief.gridError, 2), formWords(belief, options))}</p>
    </div>
  )
}

const formWords = (belief: BeliefReport, options: readonly Option[]): string =>
  listed(options.map(({ id, name }) => `${name} ${signedPoints(belief.form?.[id] ?? 0)}`))
