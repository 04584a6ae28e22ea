import type { DecisionRecord } from '../../../src/model/documents/records.ts'
import { DotPlot } from '../../charts/DotPlot.tsx'
import { Figure } from '../../charts/Figure.tsx'
import { Measured } from '../../charts/Measured.tsx'
import { quantileDots } from '../../charts/quantileDots.ts'
import { Loading } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { points } from '../../words/format.ts'
import { useModel } from '../../worker/useModel.ts'

/** Twenty equally likely matches per option. */
export function Matches(props: { decision: DecisionRecord }) {
  const { game, options } = props.decision.snapshot
  const texts = words().start.matches
  const [first, second] = options
  const a = useModel('report', first ? { game, option: first, with: [] } : null)
  const b = useModel('report', second ? { game, option: second, with: [] } : null)
  const rows = [
    { option: first, report: a.data },
    { option: second, report: b.data },
  ].flatMap(({ option, report }) =>
    option && report
      ? [{ id: option.id, name: option.name, distribution: report.distribution, mean: report.expected.total }]
      : [],
  )
  if (a.error) return <p className="soft">{a.error.message}</p>
  if (rows.length === 0) return <Loading what={texts.what} />
  return (
    <div>
      <Figure
        title={texts.title}
        table={{
          head: [texts.head, ...rows.map((row) => row.name)],
          rows: Array.from({ length: 20 }, (_, index) => [
            index + 1,
            ...rows.map((row) => points(quantileDots(row.distribution)[index]!)),
          ]),
        }}
      >
        <Measured drawn="start" data={rows}>
          {(width) => <DotPlot rows={rows} width={width} threshold={null} />}
        </Measured>
      </Figure>
      <p className="soft small">{texts.legend}</p>
    </div>
  )
}
