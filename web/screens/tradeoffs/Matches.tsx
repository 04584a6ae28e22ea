import { TextInput } from '@mantine/core'
import { useQueries } from '@tanstack/react-query'
import { useState } from 'react'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { belowWords, DotPlot, seriesLetter } from '../../charts/DotPlot.tsx'
import { Figure } from '../../charts/Figure.tsx'
import { Measured } from '../../charts/Measured.tsx'
import { quantileDots } from '../../charts/quantileDots.ts'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { readNumber } from '../../shell/fields/parse.ts'
import { Loading } from '../../shell/states.tsx'
import { explainPlan } from '../../words/explain.ts'
import { points } from '../../words/format.ts'
import { askModel } from '../../worker/client.ts'

/** Twenty equally likely matches of each option, and how many of them stay below a number of points. */
export function Matches(props: { game: Game; options: Option[]; source: string }) {
  const { game, options } = props
  const reports = useQueries({
    queries: options.map((option) => ({
      queryKey: ['model', 'report', { game, option, with: [] }],
      queryFn: ({ signal }: { signal: AbortSignal }) => askModel('report', { game, option, with: [] }, { signal }),
      staleTime: Number.POSITIVE_INFINITY,
      retry: false,
    })),
  })
  const [text, setText] = useState<string | null>(null)
  const rows = options.flatMap((option, index) => {
    const report = reports[index]?.data
    return report
      ? [
          {
            id: option.id,
            name: option.name,
            distribution: report.distribution,
            mean: report.expected.total,
            report,
            option,
          },
        ]
      : []
  })
  const error = reports.find((report) => report.error)?.error
  if (rows.length < options.length) return error ? <p role="alert">{error.message}</p> : <Loading what="the matches" />
  const typical = Math.round(Math.min(...rows.map(({ report }) => report.p10)) / 5) * 5
  const read = text === null ? { value: typical } : readNumber(text, { min: 0, max: 1000 })
  const threshold = 'value' in read ? read.value : null
  return (
    <section className="sheet stack" aria-labelledby="matches-title">
      <h2 id="matches-title">Match to match</h2>
      <div className="row">
        <TextInput
          label="Fewer than … points"
          inputMode="decimal"
          w={150}
          value={text ?? String(typical)}
          error={'error' in read ? read.error : null}
          onChange={(event) => setText(event.currentTarget.value)}
        />
        {threshold !== null && (
          <ul className="facts">
            {rows.map((row, index) => (
              <li key={row.id}>
                {seriesLetter(index)} {row.name}: {belowWords(row.distribution, threshold)}.
              </li>
            ))}
          </ul>
        )}
      </div>
      <Figure
        title="Twenty equally likely matches of each"
        hideTitle
        table={{
          head: ['Match of 20', ...rows.map((row) => row.name)],
          rows: Array.from({ length: 20 }, (_, index) => [
            index + 1,
            ...rows.map((row) => points(quantileDots(row.distribution)[index]!)),
          ]),
        }}
      >
        <Measured>{(width) => <DotPlot rows={rows} width={width} threshold={threshold} />}</Measured>
      </Figure>
      <p className="soft small">
        Each dot is one of 20 equally likely matches of this robot, filled where it stays below the line; the triangle
        is the mean. What we do not know about the robots is not in it: see ‘What you believe’.
      </p>
      <ul className="facts">
        {rows.map((row) => (
          <li key={row.id}>
            {row.name}:{' '}
            <CameAbout explain={() => explainPlan(game, row.option, row.report, props.source)}>
              {points(row.mean)} expected points
            </CameAbout>
          </li>
        ))}
      </ul>
    </section>
  )
}
