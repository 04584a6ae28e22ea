import { Button, NativeSelect } from '@mantine/core'
import { useMemo, useState } from 'react'
import {
  type Gearing,
  mechanismAnswer,
  reductionBounds,
  type SweepResult,
  withGearing,
} from '../../../../src/model/timing/index.ts'
import type { ValueCell } from '../../../charts/cell.ts'
import { pointsCell, secondsCell } from '../../../charts/cells.ts'
import { Figure } from '../../../charts/Figure.tsx'
import { Measured } from '../../../charts/Measured.tsx'
import { GearingChart } from '../../../charts/timing/GearingChart.tsx'
import { forgetTexts, useEdit } from '../../../shell/fields/EditContext.tsx'
import { TableDownload } from '../../../shell/TableDownload.tsx'
import { shownTable } from '../../../tables/shown.ts'
import { words } from '../../../words/catalogue.ts'
import { listed, percent, plain, points, signedPoints } from '../../../words/format.ts'
import { hundredths } from '../hundredths.ts'
import { remarkWords } from '../remarks.ts'
import { PointsPart } from './PointsPart.tsx'
import { mostPoints, placeOf, rowsOf, type SearchRow } from './rows.ts'
import type { SearchProps } from './Search.tsx'
import { amperes, reductionSaid, reductionTaken, volts } from './say.ts'
import { usePoints } from './usePoints.ts'

/** A sweep as a picture and in words, a place in it to read off, and taking that over. */
export function Found(
  props: SearchProps & { result: SweepResult; present: Gearing; followers: number; limit: number | null },
) {
  const { game, option, mechanism, result, present } = props
  const text = words().search
  const match = usePoints({ game, option, mechanism: mechanism.id, result, present })
  const rows = useMemo(() => rowsOf(result, match.planned), [result, match.planned])
  const [chosen, setChosen] = useState(() => placeOf(rows, result.best ?? present)!)
  const row = rows.find(({ motors }) => motors === chosen.motors) ?? rows[0]!
  const { best, flat } = result
  const share = flat ? percent(flat.share) : ''
  const bestSaid = best
    ? text.best(reductionSaid(best.reduction), text.motorsOf(best.motors), hundredths(best.seconds!))
    : result.points.some(({ seconds }) => seconds !== null)
      ? text.none
      : text.impossible
  const [first, last] = [row.points[0]!, row.points.at(-1)!]
  const most = mostPoints(rows)
  const table = {
    head: Object.values(text.columns),
    rows: rows.flatMap((each) => each.points.map((_, place) => cellsOf(each, place))),
  }
  const title = text.figure(mechanism.name)
  return (
    <>
      <ul className="facts" aria-live="polite">
        <li>
          <strong>{bestSaid}</strong> {flat && text.flat(reductionSaid(flat.low), reductionSaid(flat.high), share)}{' '}
          {best && atEdge(rows, best) && text.edge}
        </li>
        <li>
          <Now {...props} />
        </li>
        {most && (
          <li>
            <strong>
              {text.mostPoints(reductionSaid(most.at.reduction), text.motorsOf(most.at.motors), points(most.points))}
            </strong>{' '}
            {match.now !== null && text.more(signedPoints(most.points - match.now))}{' '}
            {text.fewLess(reductionSaid(most.low), reductionSaid(most.high), points(0.1))}
          </li>
        )}
      </ul>
      <PointsPart match={match} rows={rows} followers={props.followers} />
      <Figure title={title} table={table}>
        <Measured drawn="gearings" data={rows}>
          {(width) => (
            <GearingChart
              lines={rows.map(lineOf)}
              chosen={{ motors: row.motors, place: chosen.place }}
              best={best}
              flat={flat && { ...flat, share }}
              now={present}
              limit={props.limit}
              width={width}
              said={text.picture(reductionSaid(first.reduction), reductionSaid(last.reduction), bestSaid)}
              onChoose={(place) => setChosen({ motors: row.motors, place })}
            />
          )}
        </Measured>
        <p className="soft small">
          {text.lines(listed(rows.map(({ motors }) => `${motors}×`)))} {text.legend(text.motorsOf(row.motors))}
        </p>
      </Figure>
      <TableDownload title={title} table={() => shownTable(title, table.head, table.rows as never)} />
      <div className="row search-reading" style={{ alignItems: 'end' }}>
        <NativeSelect
          label={text.readMotors}
          value={String(row.motors)}
          data={rows.map(({ motors }) => ({ value: String(motors), label: text.motorsOf(motors) }))}
          onChange={(event) => setChosen({ ...chosen, motors: Number(event.currentTarget.value) })}
        />
        <label style={{ flex: '1 1 14rem' }}>
          {text.read}
          <input
            type="range"
            min={0}
            max={row.points.length - 1}
            value={chosen.place}
            aria-valuetext={reductionSaid(row.points[chosen.place]!.reduction)}
            onChange={(event) => setChosen({ ...chosen, place: Number(event.currentTarget.value) })}
          />
        </label>
      </div>
      <Taking {...props} row={row} place={chosen.place} now={match.now} />
    </>
  )
}

const lineOf = ({ motors, points: row, match }: SearchRow) => ({
  motors,
  at: row.map(({ reduction, seconds, loads, within }, place) => ({
    reduction,
    seconds,
    current: loads?.sourceCurrent ?? null,
    points: match[place]?.points ?? null,
    within,
  })),
})

const atEdge = (rows: readonly SearchRow[], best: NonNullable<SweepResult['best']>): boolean => {
  const row = rows.find(({ motors }) => motors === best.motors)?.points
  return best.reduction === row?.[0]?.reduction || best.reduction === row?.at(-1)?.reduction
}

function cellsOf({ points: row, match }: SearchRow, place: number): (string | ValueCell)[] {
  const text = words().search
  const { motors, reduction, seconds, loads, within } = row[place]!
  const filled = match[place]
  const cell = (value: number | undefined, say: (value: number) => string, unit: string): ValueCell | string =>
    value === undefined ? '–' : { shown: say(value), value, unit }
  return [
    { shown: plain(motors), value: motors },
    { shown: reductionSaid(reduction), value: reduction },
    seconds === null ? '–' : secondsCell(seconds, hundredths(seconds)),
    cell(loads?.motorCurrent, amperes, 'A'),
    cell(loads?.sourceCurrent, amperes, 'A'),
    cell(loads?.sourceVoltage, volts, 'V'),
    within ? text.yes : text.no,
    filled ? pointsCell(filled.points) : '–',
    filled && Number.isFinite(filled.off) ? { shown: plain(filled.off), value: filled.off } : '–',
  ]
}

function Now({ mechanism, present }: Pick<SearchProps, 'mechanism'> & { present: Gearing }) {
  const text = words().search
  const answer = mechanismAnswer(mechanism)
  const parts = [reductionSaid(present.reduction), text.motorsOf(present.motors)] as const
  return answer.possible ? text.now(...parts, hundredths(answer.seconds)) : text.nowCannot(...parts)
}

/** The chosen place in words, and making it the mechanism's own. */
function Taking(props: SearchProps & { row: SearchRow; place: number; now: number | null; present: Gearing }) {
  const { mechanism, index, row, place, now, present } = props
  const edit = useEdit()
  const text = words().search
  const point = row.points[place]!
  const reduction = Math.min(reductionBounds.high, Math.max(reductionBounds.low, reductionTaken(point.reduction)))
  const said = [reductionSaid(point.reduction), text.motorsOf(point.motors)] as const
  const found = row.match[place]
  const same = reduction === present.reduction && point.motors === present.motors
  const take = () => {
    const input = ['robot', 'mechanisms', index, 'input']
    // What was typed there and is no number yet gives way to what is taken over.
    for (const name of ['reduction', 'motors']) {
      edit.setText([...input, name], null, null)
      forgetTexts(edit, [...input, name])
    }
    edit.set(input, withGearing(mechanism, { reduction, motors: point.motors }).input)
    edit.pause()
  }
  return (
    <div className="stack">
      <p aria-live="polite">
        {point.loads && point.seconds !== null ? (
          <strong>
            {text.reads({
              reduction: said[0],
              motors: said[1],
              time: hundredths(point.seconds),
              motor: amperes(point.loads.motorCurrent),
              source: amperes(point.loads.sourceCurrent),
              voltage: volts(point.loads.sourceVoltage),
            })}
          </strong>
        ) : (
          <>
            <strong>{text.cannot(...said)}</strong> {point.why && remarkWords(point.why)}
          </>
        )}{' '}
        {point.seconds !== null && !point.within && text.outside}{' '}
        {found && now !== null && text.readsPoints(points(found.points), signedPoints(found.points - now))}
      </p>
      {!edit.readOnly && (
        <div className="row">
          <Button variant="default" disabled={point.seconds === null || same} onClick={take}>
            {text.take}
          </Button>
          {same && <span className="soft">{text.taken}</span>}
        </div>
      )}
    </div>
  )
}
