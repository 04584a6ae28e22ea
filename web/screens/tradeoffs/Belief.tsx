import { Button, Progress } from '@mantine/core'
import { useEffect, useRef, useState } from 'react'
import type { BeliefReport, CompareRequest } from '../../../src/model/compare/types.ts'
import type { ComparisonRecord } from '../../../src/model/documents/records.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { DataTable, Figure } from '../../charts/Figure.tsx'
import { Measured } from '../../charts/Measured.tsx'
import { ValueBars } from '../../charts/ValueBars.tsx'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { words as texts } from '../../words/catalogue.ts'
import { explainKnowing, explainMeasuring } from '../../words/explainAnswer.ts'
import { listed, percent, points, signedPoints } from '../../words/format.ts'
import { inputWords } from '../../words/inputs.ts'
import { measureWords } from '../../words/measure.ts'
import { optionName } from '../../words/verdict.ts'
import { computeBelief } from '../../worker/belief.ts'

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
      else setTrouble(belief ? 'Stopped. Shown is the last result.' : 'Stopped.')
    } finally {
      setShare(null)
    }
  }
  return (
    <section className="sheet stack" aria-labelledby="belief-title">
      <div className="row spread">
        <h2 id="belief-title">What you believe, and what to measure next</h2>
        {share === null ? (
          <Button variant="default" onClick={() => void start()}>
            {belief ? 'Compute again' : 'Compute'}
          </Button>
        ) : (
          <Button variant="default" onClick={() => stop.current?.abort()}>
            Stop
          </Button>
        )}
      </div>
      {share !== null && (
        <div role="status">
          <p>2,000 draws of all unknowns: {percent(share)}</p>
          <Progress value={share * 100} color="var(--deep)" aria-label="Progress of the belief" />
        </div>
      )}
      {trouble && <p role="status">{trouble}</p>}
      {belief ? (
        <Known belief={belief} record={record} documents={documents} source={props.source} />
      ) : (
        share === null && <p>Not computed for these numbers yet. It takes some seconds and can be stopped.</p>
      )}
    </section>
  )
}

function Known(props: {
  belief: BeliefReport
  record: ComparisonRecord
  documents: { game: Game; options: Option[] }
  source: string
}) {
  const { belief, record, documents, source } = props
  const { options } = documents
  const worth = record.inputs
    .map((input) => ({
      input,
      words: inputWords(input, documents),
      ...(belief.evppi[input.id] ?? { value: 0, standardError: 0 }),
    }))
    .sort((a, b) => b.value - a.value)
  const next = measureWords(belief, record.inputs, documents)
  const learnable = record.inputs.filter(({ id }) => (belief.evsi[id]?.length ?? 0) > 0)
  return (
    <div className="stack wide">
      <div className="columns">
        <Figure
          title="Chance of being the best"
          table={{
            head: ['Option', 'Chance', 'Lost on average if chosen'],
            rows: options.map(({ id, name }) => [
              name,
              percent(belief.best[id] ?? 0),
              `${points(belief.regret[id] ?? 0)} points`,
            ]),
          }}
        >
          <Measured>
            {(width) => (
              <ValueBars
                width={width}
                most={1}
                label="Chance of being the best"
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
          title="Worth of knowing one unknown exactly"
          table={{
            head: ['Unknown', 'Points a match', 'Standard error'],
            rows: worth.map(({ words, value, standardError }) => [words.name, points(value), points(standardError)]),
          }}
        >
          <Measured>
            {(width) => (
              <ValueBars
                width={width}
                label="Points a match that knowing it would bring"
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
        Knowing everything before deciding would be worth{' '}
        <CameAbout explain={() => explainKnowing(belief, record.inputs, documents, source)}>
          {points(belief.evpi.value)} points a match
        </CameAbout>{' '}
        (standard error {points(belief.evpi.standardError)}). {next}{' '}
        {learnable.length > 0 && (
          <CameAbout explain={() => explainMeasuring(belief, learnable, documents, { result: next, source })}>
            {texts().explain.openedOf(texts().explain.measuring.title)}
          </CameAbout>
        )}
      </p>
      {learnable.length > 0 && (
        <details>
          <summary>What measuring is worth, by number of measurements</summary>
          <div className="scroll">
            <DataTable
              caption="Points a match by number of measurements"
              table={{
                head: ['Unknown', ...(belief.evsi[learnable[0]!.id] ?? []).map(([count]) => String(count))],
                rows: learnable.map((input) => [
                  inputWords(input, documents).name,
                  ...(belief.evsi[input.id] ?? []).map(([, value]) => points(value)),
                ]),
              }}
            />
          </div>
        </details>
      )}
      <p className="soft small">
        Computed at form 1 on a coarse grid of time; on the fine one the difference changes by{' '}
        {belief.gridError.toFixed(2)} points (root mean square). What the spread of form adds at the likely values:{' '}
        {formWords(belief, options)}.
      </p>
    </div>
  )
}

const formWords = (belief: BeliefReport, options: readonly Option[]): string =>
  listed(options.map(({ id, name }) => `${name} ${signedPoints(belief.form?.[id] ?? 0)}`))
