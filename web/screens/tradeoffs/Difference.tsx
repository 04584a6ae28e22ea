import { NativeSelect } from '@mantine/core'
import { useMemo, useState } from 'react'
import { signedCell } from '../../charts/cells.ts'
import { DifferenceDots, dotsBehind } from '../../charts/DifferenceDots.tsx'
import { seriesLetter } from '../../charts/DotPlot.tsx'
import { Figure } from '../../charts/Figure.tsx'
import { Measured } from '../../charts/Measured.tsx'
import { quantileDots } from '../../charts/quantileDots.ts'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { Fold } from '../../shell/parts/Fold.tsx'
import { Loading } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { percent } from '../../words/format.ts'
import { useModel } from '../../worker/useModel.ts'
import { explainDifference } from './explain.ts'
import type { MatchRow } from './Matches.tsx'

/** One match of an option against one match of another: how often the better one on average scores less. */
export function Difference(props: { rows: MatchRow[]; source: string }) {
  const { rows } = props
  const text = words().tradeoffs.difference
  const order = [...rows].sort((a, b) => b.mean - a.mean)
  const [chosen, setChosen] = useState<{ own?: string; other?: string }>({})
  const own = rows.find(({ id }) => id === chosen.own) ?? order[0]!
  const other = rows.find(({ id }) => id === chosen.other) ?? order.find(({ id }) => id !== own.id)!
  const choices = rows.map((row, index) => ({ value: row.id, label: `${seriesLetter(index)} ${row.name}` }))
  return (
    <div className="stack">
      <Fold id="difference-title" title={text.title} level={3}>
        <div className="row">
          <NativeSelect
            label={text.of}
            maw="100%"
            value={own.id}
            data={choices}
            onChange={(event) => setChosen({ own: event.currentTarget.value, other: other.id })}
          />
          <NativeSelect
            label={text.less}
            maw="100%"
            value={other.id}
            data={choices}
            error={own.id === other.id ? text.two : null}
            onChange={(event) => setChosen({ own: own.id, other: event.currentTarget.value })}
          />
        </div>
        {own.id !== other.id && <Pair own={own} other={other} source={props.source} index={rows.indexOf(own)} />}
      </Fold>
    </div>
  )
}

function Pair(props: { own: MatchRow; other: MatchRow; source: string; index: number }) {
  const { own, other, source } = props
  const text = words().tradeoffs.difference
  const found = useModel(
    'difference',
    useMemo(() => ({ own: own.distribution, other: other.distribution }), [own, other]),
    true,
  )
  if (found.error) return <p role="alert">{found.error.message}</p>
  if (!found.data || found.isPlaceholderData) return <Loading what={text.loading} />
  const difference = found.data
  const dots = quantileDots(difference)
  const behind = dotsBehind(dots)
  const level = dots.filter((dot) => dot === 0).length
  const less = difference.reduce((sum, [value, chance]) => (value < 0 ? sum + chance : sum), 0)
  return (
    <>
      <p>
        {text.less20(behind, own.name, other.name)}
        {level > 0 && text.same20(level)};{' '}
        <CameAbout explain={() => explainDifference([own.option, other.option], { difference, source })}>
          {text.exact(percent(less))}
        </CameAbout>
      </p>
      <Figure
        title={text.figure}
        hideTitle
        table={{
          head: [text.pair, text.points],
          rows: dots.map((dot, index) => [index + 1, signedCell(dot)]),
        }}
      >
        <Measured drawn="difference" data={difference}>
          {(width) => (
            <DifferenceDots
              distribution={difference}
              mean={own.mean - other.mean}
              width={width}
              index={props.index}
              axis={text.axis}
            />
          )}
        </Measured>
      </Figure>
      <p className="soft small">{text.means}</p>
    </>
  )
}
