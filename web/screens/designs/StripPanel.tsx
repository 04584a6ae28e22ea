import { Fragment, type ReactNode, useMemo, useState } from 'react'
import type { Game, Option, Robot } from '../../../src/model/documents/types.ts'
import type { Worth } from '../../../src/model/plan/types.ts'
import { CycleStrip } from '../../charts/CycleStrip.tsx'
import { percentCell, pointsCell, secondsCell } from '../../charts/cells.ts'
import { type ChartTable, Figure } from '../../charts/Figure.tsx'
import { Measured } from '../../charts/Measured.tsx'
import { type StripBar, stripLayout } from '../../charts/stripLayout.ts'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { useEdit } from '../../shell/fields/EditContext.tsx'
import { keysOf } from '../../shell/keyNames.ts'
import { Loading } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { explainWorth } from '../../words/explainMoves.ts'
import { percent, points, seconds } from '../../words/format.ts'
import type { Cycle, View } from './cycle.ts'
import type { Selected } from './DesignEditor.tsx'
import { canMove } from './durations.ts'
import { explainCritical, explainFloat, explainWaiting } from './explain.ts'
import { CycleChoice, Views } from './StripChoices.tsx'
import { stripLegs } from './stripLegs.ts'
import type { Live } from './useLive.ts'
import { useStageMoves } from './useStageMoves.ts'
import { barTime, useStripEdits } from './useStripEdits.ts'

export function StripPanel(props: {
  game: Game
  option: Option
  live: Live
  worth: Worth[]
  view: View
  onView(view: View): void
  cycle: Cycle | null
  onCycle(cycle: Cycle): void
  selected: Selected | null
  onSelect(selected: Selected): void
  /** What the robot would be if the drag under way ended now; null: there is none. */
  onPreview(robot: Robot | null): void
  /** While a timing is open beneath: the expected points, which stay in view with the strip; null: none is open. */
  points: number | null
  stale: boolean
  problems: string[]
  source: string
  children: ReactNode
}) {
  const { game, option, live, worth } = props
  const { robot } = option
  const edit = useEdit()
  const texts = words().strip
  const legs = useMemo(() => live.legs.map(({ leg }) => leg), [live.legs])
  const still = useMemo(() => stripLayout(stripLegs(live.legs, robot, worth)), [live.legs, robot, worth])
  const edits = useStripEdits({ robot, legs, end: still.end, onPreview: props.onPreview })
  const { shown } = edits
  const layout = useMemo(
    () => (shown === robot ? still : stripLayout(stripLegs(live.legs, shown, worth))),
    [shown, robot, still, live.legs, worth],
  )
  const [said, setSaid] = useState<string | null>(null)
  const moves = useStageMoves({ robot, legs, onSaid: setSaid })
  const waiting = layout.sections.filter((section) => section.waiting >= 0.1)
  return (
    <section className="sheet stack" aria-labelledby="strip-title">
      <div className="row spread">
        <h2 id="strip-title">{texts.title}</h2>
        <Views {...props} />
      </div>
      {props.cycle && <CycleChoice game={game} option={option} cycle={props.cycle} onCycle={props.onCycle} />}
      {props.problems.length > 0 && (
        <div role="alert" className="loss">
          <p>{layout.bars.length > 0 ? texts.lastGood : texts.none}</p>
          <ul>
            {props.problems.slice(0, 4).map((problem) => (
              <li key={problem}>{problem}</li>
            ))}
          </ul>
        </div>
      )}
      {layout.bars.length === 0 ? (
        props.problems.length === 0 &&
        (live.exact && !props.cycle ? <p>{texts.noCycle}</p> : <Loading what={texts.loading} />)
      ) : (
        <div className={props.points === null ? undefined : 'strip-stays'}>
          {props.points !== null && (
            <p className="small strip-points">{words().timings.panel.points(points(props.points))}</p>
          )}
          <Figure title={texts.figure} hideTitle table={tableOf(layout.bars, props.source)}>
            <Measured drawn="strip" data={layout}>
              {(width) => (
                <CycleStrip
                  layout={layout}
                  width={width}
                  until={edits.until}
                  stale={props.stale}
                  handlers={{
                    selected: props.selected,
                    onSelect: ({ leg, stage }) => props.onSelect({ leg, stage }),
                    ...edits.handlers,
                    ...(edit.readOnly ? {} : moves),
                    canChange: (bar) => {
                      const found = barTime(robot, legs, bar)
                      return found !== null && canMove(found.duration)
                    },
                  }}
                />
              )}
            </Measured>
          </Figure>
        </div>
      )}
      <p role="status" className={said ? undefined : 'visually-hidden'}>
        {said}
      </p>
      <div className="soft small">
        {texts.legend} {!edit.readOnly && texts.keys(barKeys())}{' '}
        {waiting.length > 0 && (
          <>
            {texts.waiting[0]}
            {waiting.map((section, index) => (
              <Fragment key={section.leg}>
                {index > 0 && '; '}
                <CameAbout explain={() => explainWaiting(section, props.source)}>
                  {texts.bar(section.name, seconds(section.waiting))}
                </CameAbout>
              </Fragment>
            ))}
            {texts.waiting[1]}
          </>
        )}{' '}
        {layout.bars.some((bar) => bar.worth !== null) && (
          <span className="no-print">
            <CameAbout explain={() => explainWorth(layout.bars, props.source)}>
              {words().explain.openedOf(words().explainNumbers.worth.title)}
            </CameAbout>
          </span>
        )}
      </div>
      {props.children}
    </section>
  )
}

/** The keys of a bar as they are written on the reader's keyboard. */
const barKeys = () => ({
  longer: keysOf('barLonger'),
  shorter: keysOf('barShorter'),
  much: keysOf('barMuchLonger'),
  muchLess: keysOf('barMuchShorter'),
  earlier: keysOf('barEarlier'),
  later: keysOf('barLater'),
  remove: keysOf('barRemove'),
})

/** The bars as numbers that open. */
const tableOf = (bars: readonly StripBar[], source: string): ChartTable => ({
  head: words().strip.head,
  rows: bars.map((bar) => [
    bar.repeats > 1 ? `${bar.name}, ${words().strip.repeated(bar.repeats)}` : bar.name,
    secondsCell(bar.start),
    secondsCell(bar.mean),
    secondsCell(
      bar.floatUntil - bar.finish,
      <CameAbout explain={() => explainFloat(bar, source)}>{seconds(bar.floatUntil - bar.finish)}</CameAbout>,
    ),
    percentCell(
      bar.criticality,
      <CameAbout explain={() => explainCritical(bar, bars, source)}>{percent(bar.criticality)}</CameAbout>,
    ),
    bar.worth === null
      ? '–'
      : pointsCell(
          bar.worth,
          <CameAbout explain={() => explainWorth(bars, source)}>
            {words().strip.worthCell(points(bar.worth))}
          </CameAbout>,
        ),
  ]),
})
