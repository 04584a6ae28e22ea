import { useMemo } from 'react'
import type { CompareReport } from '../../../src/model/compare/types.ts'
import type { ComparisonRecord } from '../../../src/model/documents/records.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { Figure } from '../../charts/Figure.tsx'
import { Measured } from '../../charts/Measured.tsx'
import { SwingChart } from '../../charts/SwingChart.tsx'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { words as texts } from '../../words/catalogue.ts'
import { explainSwing } from '../../words/explainAnswer.ts'
import { signedPoints } from '../../words/format.ts'
import { inputWords } from '../../words/inputs.ts'
import { optionName, verdict } from '../../words/verdict.ts'
import { useModel } from '../../worker/useModel.ts'

/** How far each unknown alone moves the lead. */
export function Swings(props: {
  report: CompareReport
  record: ComparisonRecord
  documents: { game: Game; options: Option[] }
  source: string
}) {
  const { report, record, documents } = props
  const found = verdict(report)
  const atLikely = useModel(
    'likely',
    useMemo(() => ({ ...documents, inputs: record.inputs }), [documents, record.inputs]),
  )
  const bars = (report.swing ?? []).flatMap((swing) => {
    const input = record.inputs.find(({ id }) => id === swing.input)
    if (!input) return []
    const words = inputWords(input, documents)
    return [
      {
        id: swing.input,
        name: words.name,
        low: words.say(swing.low),
        high: words.say(swing.high),
        difference: swing.difference,
      },
    ]
  })
  if (!found?.second || bars.length === 0) return null
  const index = (id: string | null) => documents.options.findIndex((option) => option.id === id)
  const likely = atLikely.data && atLikely.data[index(found.best)]! - atLikely.data[index(found.second)]!
  const base = likely ?? found.lead
  const turns = bars.filter(({ difference }) => Math.min(...difference) < 0)
  return (
    <section className="sheet stack" aria-labelledby="swing-title">
      <h2 id="swing-title">Which arguments matter</h2>
      <p>
        Each unknown alone, from its low to its high value: how far it moves the lead of{' '}
        {optionName(documents.options, found.best)}.{' '}
        {turns.length > 0
          ? `${turns.map(({ name }) => `‘${name}’`).join(', ')} can turn the answer alone; the others can not.`
          : 'None of them turns the answer alone.'}
        {likely !== undefined &&
          Math.abs(likely - found.lead) >= 0.05 &&
          ` With all unknowns at their likely values the lead is ${signedPoints(likely)}; the documents as they stand say ${signedPoints(found.lead)}.`}
      </p>
      <Figure
        title="Lead of the best option, one unknown at a time"
        hideTitle
        table={{
          head: ['Unknown', 'Low', 'Lead at low', 'High', 'Lead at high'],
          rows: bars.map((bar) => [
            bar.name,
            bar.low,
            signedPoints(bar.difference[0]),
            bar.high,
            signedPoints(bar.difference[1]),
          ]),
        }}
      >
        <Measured>
          {(width) => (
            <SwingChart bars={bars} base={base} width={width} ahead="still the best" behind="another is better" />
          )}
        </Measured>
      </Figure>
      <p>
        <CameAbout
          explain={() => explainSwing(bars, { lead: base, found, options: documents.options, source: props.source })}
        >
          {texts().explain.opened}
        </CameAbout>
      </p>
    </section>
  )
}
