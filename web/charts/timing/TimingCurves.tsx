import type { Mechanism } from '../../../src/model/documents/mechanism.ts'
import type { MechanismAnswer } from '../../../src/model/timing/index.ts'
import { unitOf } from '../../units/quantities.ts'
import { unitsShown } from '../../units/system.ts'
import { words } from '../../words/catalogue.ts'
import { plain } from '../../words/format.ts'
import { type ChartTable, Figure } from '../Figure.tsx'
import { useDrawn } from '../useDrawn.ts'
import { useWidth } from '../useWidth.ts'
import { LineKey } from './curves/LineKey.tsx'
import { between, type CurvePanel } from './curves/panel.ts'
import { panelsOf } from './curves/panels.ts'
import { SmallMultiples } from './curves/SmallMultiples.tsx'
import { MomentSlider } from './MomentSlider.tsx'
import { momentAt, useMoment } from './moment.ts'
import { sayLength, sayTime } from './say.ts'
import './timing.css'
import { type Shown, useShown } from './useShown.ts'

/** One picture alone gains nothing beyond this; two columns have room for more. */
const widest = { one: 720, several: 1100 }

/**
 * Speed, current, distance and pressure as small pictures on one scale of time, with their limits and a cursor that the drawing
 * shares; a flight as height over distance. Nothing where the mechanism can not do it.
 */
export function TimingCurves({ mechanism, answer }: { mechanism: Mechanism; answer: MechanismAnswer }) {
  const shown = useShown(mechanism, answer)
  if (!shown.curves) return null
  return <Curves mechanism={mechanism} shown={shown} curves={shown.curves} />
}

function Curves(props: { mechanism: Mechanism; shown: Shown; curves: NonNullable<Shown['curves']> }) {
  const { mechanism, shown, curves } = props
  useDrawn('curves', shown)
  const text = words().timingCharts.curves
  const panels = panelsOf(shown)
  const along = alongOf(shown)
  return (
    <div className="mechanism wide">
      <Figure
        title={along.flies ? text.flight(mechanism.name) : text.title(mechanism.name)}
        table={tableOf(panels, along, curves.time)}
      >
        <Moving id={mechanism.id} panels={panels} along={along} time={curves.time} />
      </Figure>
    </div>
  )
}

/** What another moment draws anew; curves and table stay as they are. */
function Moving(props: { id: string; panels: CurvePanel[]; along: Along; time: readonly number[] }) {
  const { panels, along, time } = props
  const { ref, width } = useWidth<HTMLDivElement>()
  const [share, choose] = useMoment(props.id)
  const text = words().timingCharts
  const seconds = time.at(-1)!
  const now = momentAt(time, share)
  const readings = panels.flatMap((panel) =>
    panel.lines.map(({ name, values }) => `${name} ${panel.say(now.of(values))}`),
  )
  const at = along.flies ? `${sayTime(now.time)}, ${sayLength(now.of(along.metres))}` : sayTime(now.time)
  const said = text.at(at, readings.join(' · '))
  const names = panels.map(({ name }) => name).join(', ')
  return (
    <>
      <div ref={ref} className="mechanism-picture">
        <SmallMultiples
          panels={panels}
          x={along.x}
          domain={[along.x[0]!, along.x.at(-1)!]}
          unit={along.unit}
          width={Math.min(panels.length > 1 ? widest.several : widest.one, width)}
          label={text.curves.said(names, sayTime(seconds))}
          cursor={along.flies ? between(time, along.x, now.time) : now.time}
          onCursor={(index) => choose(time[index]! / seconds)}
        />
      </div>
      <Legend panels={panels} />
      <div className="no-print">
        <MomentSlider label={text.curves.read} share={share} said={said} onShare={choose} />
      </div>
      <p className="small numerals">{said}</p>
    </>
  )
}

/** What stands along x: seconds, or for a flight the level distance in the reader's unit. */
interface Along {
  x: readonly number[]
  unit: string
  flies: boolean
  /** Level distance (m); empty where time stands along x. */
  metres: readonly number[]
}

function alongOf(shown: Shown): Along {
  const { curves } = shown
  if (shown.calculator !== 'shot' || !shown.curves)
    return { x: curves!.time, unit: words().timingCharts.curves.seconds, flies: false, metres: [] }
  const { symbol, factor } = unitOf('length', unitsShown())
  const metres = shown.curves.distance
  return { x: metres.map((each) => each / factor), unit: symbol, flies: true, metres }
}

/** Only where a picture has more lines than one; no calculator has two such pictures. */
function Legend({ panels }: { panels: CurvePanel[] }) {
  const several = panels.filter(({ lines }) => lines.length > 1)
  if (several.length === 0) return null
  return <LineKey names={several.flatMap(({ lines }) => lines.map(({ name }) => name))} />
}

/** Every third point of a curve says enough in a table; its last one belongs to it. */
const tableStep = 3

function tableOf(panels: CurvePanel[], along: Along, time: readonly number[]): ChartTable {
  const { names } = words().timingCharts
  const lines = panels.flatMap((panel) => panel.lines.map((line) => ({ ...line, panel })))
  const heads = lines.map(({ name, panel }) => `${name} (${panel.unit})`)
  const number = (value: number, factor: number, digits: number) => ({
    shown: plain(value / factor, digits),
    value: value / factor,
  })
  return {
    head: [`${names.time} (s)`, ...(along.flies ? [`${names.distance} (${along.unit})`] : []), ...heads],
    rows: time.flatMap((seconds, i) =>
      i % tableStep !== 0 && i !== time.length - 1
        ? []
        : [
            [
              number(seconds, 1, 3),
              ...(along.flies ? [number(along.x[i]!, 1, 2)] : []),
              ...lines.map(({ values, panel }) => number(values[i]!, panel.factor, 2)),
            ],
          ],
    ),
  }
}
