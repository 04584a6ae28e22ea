import { TextInput } from '@mantine/core'
import { useQueries } from '@tanstack/react-query'
import { useMemo, useState } from 'react'
import { chanceToReach } from '../../../src/model/compare/difference.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { pointsCell } from '../../charts/cells.ts'
import { belowWords, DotPlot, seriesLetter } from '../../charts/DotPlot.tsx'
import { Figure } from '../../charts/Figure.tsx'
import { Measured } from '../../charts/Measured.tsx'
import { quantileDots } from '../../charts/quantileDots.ts'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { readNumber } from '../../shell/fields/parse.ts'
import { Loading } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { explainPlan } from '../../words/explain.ts'
import { percent, plain, points } from '../../words/format.ts'
import { askModel } from '../../worker/client.ts'
import { Difference } from './Difference.tsx'
import { explainReach } from './explain.ts'

/** Twenty equally likely matches of each option, the chance to reach a number of points, and one option against another. */
export function Matches(props: { game: Game; options: Option[]; source: string }) {
  const { game, options, source } = props
  const text = words().tradeoffs.matches
  const reports = useQueries({
    queries: options.map((option) => ({
      queryKey: ['model', 'report', { game, option, with: [] }],
      queryFn: ({ signal }: { signal: AbortSignal }) => askModel('report', { game, option, with: [] }, { signal }),
      staleTime: Number.POSITIVE_INFINITY,
      retry: false,
    })),
    combine: (found) => ({
      data: found.map(({ data }) => data),
      error: found.find(({ error }) => error)?.error ?? null,
    }),
  })
  const rows = useMemo(
    () =>
      options.flatMap((option, index) => {
        const report = reports.data[index]
        if (!report) return []
        const { distribution, expected } = report
        return [{ id: option.id, name: option.name, distribution, mean: expected.total, report, option }]
      }),
    [options, reports.data],
  )
  if (rows.length < options.length)
    return reports.error ? <p role="alert">{reports.error.message}</p> : <Loading what={text.loading} />
  return (
    <section className="sheet stack" aria-labelledby="matches-title">
      <h2 id="matches-title">{text.title}</h2>
      <Dots rows={rows} source={source} />
      <ul className="facts">
        {rows.map((row) => (
          <li key={row.id}>
            {row.name}:{' '}
            <CameAbout explain={() => explainPlan(game, row.option, row.report, source)}>
              {text.expected(points(row.mean))}
            </CameAbout>
          </li>
        ))}
      </ul>
      {rows.length > 1 && <Difference rows={rows} source={source} />}
    </section>
  )
}

export interface MatchRow {
  id: string
  name: string
  distribution: [number, number][]
  mean: number
  option: Option
}

/** The dots, cut at a number of points that can be changed. */
function Dots(props: { rows: (MatchRow & { report: { p10: number } })[]; source: string }) {
  const { rows, source } = props
  const [typed, setTyped] = useState<string | null>(null)
  const text = words().tradeoffs.matches
  const typical = Math.round(Math.min(...rows.map(({ report }) => report.p10)) / 5) * 5
  const read = typed === null ? { value: typical } : readNumber(typed, { min: 0, max: 1000 })
  const threshold = 'value' in read ? read.value : null
  return (
    <>
      <div className="row" style={{ alignItems: 'start' }}>
        <TextInput
          label={text.reach}
          inputMode="decimal"
          w={150}
          value={typed ?? String(typical)}
          error={'error' in read ? read.error : null}
          onChange={(event) => setTyped(event.currentTarget.value)}
        />
        {threshold !== null && (
          <ul className="facts" style={{ flex: '1 1 18rem' }}>
            {rows.map((row, index) => (
              <li key={row.id}>
                {seriesLetter(index)} {row.name}:{' '}
                <CameAbout
                  explain={() =>
                    explainReach(row.option, { distribution: row.distribution, points: threshold, source })
                  }
                >
                  {text.chance(plain(threshold), percent(chanceToReach(row.distribution, threshold)))}
                </CameAbout>
                ; {belowWords(row.distribution, threshold)}.
              </li>
            ))}
          </ul>
        )}
      </div>
      <Figure
        title={text.dots}
        hideTitle
        table={{
          head: [text.match, ...rows.map((row) => row.name)],
          rows: Array.from({ length: 20 }, (_, index) => [
            index + 1,
            ...rows.map((row) => pointsCell(quantileDots(row.distribution)[index]!)),
          ]),
        }}
      >
        <Measured drawn="dots" data={rows}>
          {(width) => <DotPlot rows={rows} width={width} threshold={threshold} />}
        </Measured>
      </Figure>
      <p className="soft small">{text.means}</p>
    </>
  )
}
