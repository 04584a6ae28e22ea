import { useState } from 'react'
import { pressure as pressureMeasure } from '../../units/measures.ts'
import { unitOf } from '../../units/quantities.ts'
import { unitsShown } from '../../units/system.ts'
import { words } from '../../words/catalogue.ts'
import { plain, seconds as saySeconds } from '../../words/format.ts'
import { type ChartTable, Figure } from '../Figure.tsx'
import { useDrawn } from '../useDrawn.ts'
import { useWidth } from '../useWidth.ts'
import { LineKey } from './curves/LineKey.tsx'
import type { CurvePanel } from './curves/panel.ts'
import { SmallMultiples } from './curves/SmallMultiples.tsx'
import { MomentSlider } from './MomentSlider.tsx'
import { sayPressure } from './say.ts'
import './timing.css'

export interface AirCurvesProps {
  /** Seconds left in the match, falling. */
  timeLeft: number[]
  /** Of the tanks, and by the cautious bound (Pa, absolute). */
  pressure: number[]
  pressureAdiabatic: number[]
  /** Below it strokes are slow and weak (Pa, absolute). */
  working: number
  /** Time left at which the working pressure is lost (s); null: never. */
  lostAt: number | null
}

const widest = 720

/** Pressure of the tanks through a match, time left running down to the right, with the cautious bound. */
export function AirCurves({ timeLeft, pressure, pressureAdiabatic, working, lostAt }: AirCurvesProps) {
  const { ref, width } = useWidth<HTMLDivElement>()
  useDrawn('air', pressure)
  const text = words().timingCharts.air
  const last = timeLeft.length - 1
  const [chosen, choose] = useState<number | null>(null)
  if (timeLeft.length < 2) return null
  const first = lostAt === null ? last : nearestIndex(timeLeft, lostAt)
  const index = Math.min(last, chosen ?? first)
  const { symbol, factor } = unitOf(pressureMeasure, unitsShown())
  const panel: CurvePanel = {
    id: 'pressure',
    name: text.title,
    unit: symbol,
    factor,
    lines: [
      { id: 'expected', name: text.expected, values: pressure },
      { id: 'cautious', name: text.cautious, values: pressureAdiabatic },
    ],
    limits: [{ id: 'working', value: working, text: text.working(sayPressure(working)) }],
    say: sayPressure,
  }
  const fate = lostAt === null ? text.never : text.lostAt(saySeconds(lostAt))
  const said = text.at(
    saySeconds(timeLeft[index]!),
    sayPressure(pressure[index]!),
    sayPressure(pressureAdiabatic[index]!),
  )
  return (
    <div className="mechanism">
      <Figure title={text.title} hideTitle table={tableOf(panel, timeLeft)}>
        <div ref={ref} className="mechanism-picture">
          <SmallMultiples
            panels={[panel]}
            x={timeLeft}
            domain={[timeLeft[0]!, timeLeft[last]!]}
            unit={text.left}
            width={Math.min(widest, width)}
            label={`${text.title}. ${text.said(sayPressure(pressure[0]!), sayPressure(pressure[last]!), fate)}`}
            cursor={timeLeft[index]!}
            onCursor={choose}
            mark={lostAt === null ? null : { at: lostAt, text: text.lost(saySeconds(lostAt)) }}
          />
        </div>
        <LineKey names={[text.expected, text.cautious]} />
        <div className="no-print">
          <MomentSlider
            label={text.read}
            share={index / last}
            said={said}
            onShare={(share) => choose(Math.round(share * last))}
          />
        </div>
        <p className="small numerals">{said}</p>
      </Figure>
    </div>
  )
}

const nearestIndex = (places: readonly number[], at: number): number =>
  places.reduce((best, each, index) => (Math.abs(each - at) < Math.abs(places[best]! - at) ? index : best), 0)

/** A row for each ten seconds or so. */
function tableOf({ lines, unit, factor }: CurvePanel, timeLeft: readonly number[]): ChartTable {
  const text = words().timingCharts.air
  const step = Math.max(1, Math.round(timeLeft.length / 16))
  const number = (value: number) => ({ shown: plain(value / factor, 0), value: value / factor, unit })
  return {
    head: [text.timeLeft, ...lines.map(({ name }) => `${name} (${unit})`)],
    rows: timeLeft.flatMap((left, i) =>
      i % step !== 0 && i !== timeLeft.length - 1
        ? []
        : [[{ shown: saySeconds(left), value: left, unit: 's' }, ...lines.map(({ values }) => number(values[i]!))]],
    ),
  }
}
