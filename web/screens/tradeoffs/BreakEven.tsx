import { Button, NativeSelect } from '@mantine/core'
import { useMemo, useState } from 'react'
import type { Turn } from '../../../src/model/compare/index.ts'
import type { CompareReport, Input } from '../../../src/model/compare/types.ts'
import type { ComparisonRecord } from '../../../src/model/documents/records.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { BreakEvenLines } from '../../charts/BreakEvenLines.tsx'
import { pointsCell } from '../../charts/cells.ts'
import { seriesLetter } from '../../charts/DotPlot.tsx'
import { Figure } from '../../charts/Figure.tsx'
import { Measured } from '../../charts/Measured.tsx'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { useEdit } from '../../shell/fields/EditContext.tsx'
import { Loading } from '../../shell/states.tsx'
import { words as texts } from '../../words/catalogue.ts'
import { explainTurn } from '../../words/explainAnswer.ts'
import { inputWords } from '../../words/inputs.ts'
import { optionName } from '../../words/verdict.ts'
import { useModel } from '../../worker/useModel.ts'
import { inputAxis } from './axis.ts'
import { inputCell } from './inputCell.ts'
import { turnWords } from './turnWords.ts'
import { useCandidates } from './useCandidates.ts'
import { useTurn } from './useTurns.ts'

interface Documents {
  game: Game
  options: Option[]
}

/** Where one number turns the answer, in words and as a picture: any unknown, and any other number of the robots, around what the documents say. */
export function BreakEven(props: {
  report: CompareReport
  record: ComparisonRecord
  documents: Documents
  source: string
  onKeep(id: string): void
}) {
  const { record, documents } = props
  const { readOnly } = useEdit()
  const [chosen, setChosen] = useState<string | null>(null)
  const others = useCandidates(documents).filter(
    ({ id, paths }) => !record.inputs.some((input) => input.id === id || input.paths.includes(paths[0]!)),
  )
  const all = [...record.inputs, ...others]
  const input = all.find(({ id }) => id === chosen) ?? all.find(({ id }) => id === record.breakEven) ?? all[0]
  if (!input) return null
  const own = record.inputs.includes(input)
  const text = texts().turns.turn
  return (
    <section className="sheet stack" aria-labelledby="turn-title">
      <h2 id="turn-title">{text.title}</h2>
      <div className="row" style={{ alignItems: 'end' }}>
        <NativeSelect
          label={text.unknown}
          maw="100%"
          w={400}
          value={input.id}
          data={[
            {
              group: text.own,
              items: record.inputs.map((entry) => ({ value: entry.id, label: inputWords(entry, documents).name })),
            },
            { group: text.other, items: others.map(({ id }) => ({ value: id, label: id })) },
          ].filter(({ items }) => items.length > 0)}
          onChange={(event) => setChosen(event.currentTarget.value)}
        />
        {own && !readOnly && input.id !== record.breakEven && (
          <Button variant="default" onClick={() => props.onKeep(input.id)}>
            {text.keep}
          </Button>
        )}
      </div>
      <Turning key={input.id} {...props} input={input} own={own} chosen={chosen !== null} />
    </section>
  )
}

function Turning(props: {
  report: CompareReport
  record: ComparisonRecord
  documents: Documents
  source: string
  input: Input
  own: boolean
  chosen: boolean
}) {
  const { report, record, documents, input, own, source } = props
  const { inputs } = record
  const text = texts().turns.turn
  const request = useMemo(
    () => ({ ...documents, inputs: own ? inputs : [...inputs, input] }),
    [documents, inputs, input, own],
  )
  const inReport = reportedTurn(report, input)
  const asked = useTurn({ request, input: input.id, asked: props.chosen, enabled: inReport === null })
  const turn = asked.turn ?? inReport
  const { error } = asked
  const curve = useModel(
    'curve',
    useMemo(
      () => ({ ...documents, input, others: inputs.filter(({ id }) => id !== input.id), count: 17 }),
      [documents, input, inputs],
    ),
    // A picture of seconds, which need not wait behind the comparison’s minutes on a slow machine.
    true,
  )
  const words = inputWords(input, documents)
  const curves = curve.isPlaceholderData ? undefined : curve.data
  const lines = useMemo(
    () =>
      curves?.map((line) => ({ ...line, id: line.option, name: optionName(documents.options, line.option) })) ?? null,
    [curves, documents],
  )
  return (
    <>
      {turn ? (
        <ul className="facts" aria-live="polite">
          {turnWords(turn, input, documents, own).map((sentence) => (
            <li key={sentence}>
              <strong>{sentence}</strong>
            </li>
          ))}
          {lines && (
            <li className="no-print">
              <CameAbout
                explain={() => explainTurn({ ...report, breakEven: turn }, input, documents, { lines, source })}
              >
                {texts().explain.opened}
              </CameAbout>
            </li>
          )}
        </ul>
      ) : (
        !error && <Loading what={text.loading} />
      )}
      {error && <p role="alert">{error.message}</p>}
      <p className="soft small">
        {text.about(words.about)} {!own && text.notOwn}
      </p>
      {curve.error && curve.error.message !== error?.message && <p role="alert">{curve.error.message}</p>}
      {lines ? (
        <Lines
          lines={lines}
          input={input}
          documents={documents}
          crossings={turn?.crossings.map(({ value }) => value)}
        />
      ) : (
        !curve.error && <Loading what={text.lines} />
      )}
    </>
  )
}

/** What the comparison itself found for the unknown that its answer names; null where that has to be asked for. */
function reportedTurn({ breakEven }: CompareReport, input: Input): Turn | null {
  const first = breakEven?.input === input.id ? breakEven.crossings[0] : undefined
  return first ? { input: input.id, crossings: breakEven!.crossings, bestAtLow: first.from, leastLead: 0 } : null
}

function Lines(props: {
  lines: { id: string; name: string; at: [number, number][] }[]
  input: Input
  documents: Documents
  crossings: number[] | undefined
}) {
  const { input, documents, crossings = [] } = props
  const text = texts().turns.turn
  const words = inputWords(input, documents)
  const axis = inputAxis(input, documents)
  const lines = useMemo(() => {
    const { at: place } = inputAxis(input, documents)
    return props.lines.map((line) => ({
      ...line,
      at: line.at.map(([value, mean]): [number, number] => [place(value), mean]).sort(([a], [b]) => a - b),
    }))
  }, [props.lines, input, documents])
  return (
    <Figure
      title={text.figure(words.name)}
      table={{
        head: [words.name, ...lines.map((line) => line.name)],
        rows: (lines[0]?.at ?? []).map(([position], index) => [
          inputCell(input, axis.back(position), documents),
          ...lines.map((line) => pointsCell(line.at[index]?.[1] ?? 0)),
        ]),
      }}
    >
      <Measured drawn="break-even" data={props.lines}>
        {(width) => (
          <BreakEvenLines
            lines={lines}
            crossings={crossings.map(axis.at)}
            likely={axis.likely}
            width={width}
            axis={words.name}
            tick={axis.tick}
          />
        )}
      </Measured>
      <p className="soft small">
        {text.legend(lines.map((line, index) => `${seriesLetter(index)} ${line.name}`).join(' · '))}
      </p>
    </Figure>
  )
}
