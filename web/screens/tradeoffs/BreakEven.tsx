import { NativeSelect } from '@mantine/core'
import { useMemo } from 'react'
import type { CompareReport } from '../../../src/model/compare/types.ts'
import type { ComparisonRecord } from '../../../src/model/documents/records.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { BreakEvenLines } from '../../charts/BreakEvenLines.tsx'
import { seriesLetter } from '../../charts/DotPlot.tsx'
import { Figure } from '../../charts/Figure.tsx'
import { Measured } from '../../charts/Measured.tsx'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { useEdit } from '../../shell/fields/EditContext.tsx'
import { Loading } from '../../shell/states.tsx'
import { words as texts } from '../../words/catalogue.ts'
import { explainTurn } from '../../words/explainAnswer.ts'
import { points } from '../../words/format.ts'
import { inputWords } from '../../words/inputs.ts'
import { optionName, turning } from '../../words/verdict.ts'
import { useModel } from '../../worker/useModel.ts'

/** Where one unknown turns the answer: in words and as a picture. */
export function BreakEven(props: {
  report: CompareReport
  record: ComparisonRecord
  documents: { game: Game; options: Option[] }
  source: string
  onInput(id: string): void
}) {
  const { report, record, documents } = props
  const { readOnly } = useEdit()
  const input = record.inputs.find(({ id }) => id === record.breakEven)
  const curve = useModel(
    'curve',
    useMemo(
      () =>
        input ? { ...documents, input, others: record.inputs.filter(({ id }) => id !== input.id), count: 17 } : null,
      [documents, input, record.inputs],
    ),
  )
  if (!input) return null
  const words = inputWords(input, documents)
  const current = report.breakEven?.input === input.id
  const crossings = current ? (report.breakEven?.crossings ?? []).map(({ value }) => value) : []
  const lines = curve.data?.map((line) => ({
    id: line.option,
    name: optionName(documents.options, line.option),
    at: line.at,
  }))
  return (
    <section className="sheet stack" aria-labelledby="turn-title">
      <h2 id="turn-title">What would turn it</h2>
      <NativeSelect
        label="Unknown"
        disabled={readOnly}
        maw={360}
        value={input.id}
        data={record.inputs.map((entry) => ({ value: entry.id, label: inputWords(entry, documents).name }))}
        onChange={(event) => props.onInput(event.currentTarget.value)}
      />
      {current ? (
        <ul className="facts">
          {turning(report, input, documents).map((sentence) => (
            <li key={sentence}>
              <strong>{sentence}</strong>
            </li>
          ))}
          {lines && !curve.isPlaceholderData && (
            <li>
              <CameAbout explain={() => explainTurn(report, input, documents, { lines, source: props.source })}>
                {texts().explain.opened}
              </CameAbout>
            </li>
          )}
        </ul>
      ) : (
        <Loading what="where it turns" />
      )}
      <p className="soft small">{words.about}. All other unknowns are at their likely values.</p>
      {curve.error && <p role="alert">{curve.error.message}</p>}
      {lines && !curve.isPlaceholderData ? (
        <Figure
          title={`Expected points against ${words.name}`}
          table={{
            head: [words.name, ...lines.map((line) => line.name)],
            rows: (lines[0]?.at ?? []).map(([value], index) => [
              words.say(value),
              ...lines.map((line) => points(line.at[index]?.[1] ?? 0)),
            ]),
          }}
        >
          <Measured>
            {(width) => (
              <BreakEvenLines
                lines={lines}
                crossings={crossings}
                likely={input.likely}
                width={width}
                axis={words.name}
                tick={words.say}
              />
            )}
          </Measured>
          <p className="soft small">
            {lines.map((line, index) => `${seriesLetter(index)} ${line.name}`).join(' · ')}. The dashed line is where
            the best option changes.
          </p>
        </Figure>
      ) : (
        !curve.error && <Loading what="the lines" />
      )}
    </section>
  )
}
