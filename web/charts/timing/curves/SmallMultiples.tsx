import { Fragment, type PointerEvent, useRef } from 'react'
import { plain } from '../../../words/format.ts'
import { memoWords } from '../../../words/memo.tsx'
import { linearScale, pixel, type Scale } from '../../scale.ts'
import { TimeScale } from '../../TimeScale.tsx'
import { dashOf } from './LineKey.tsx'
import { limitLabels } from './limitLabels.ts'
import { between, type CurvePanel, farLimits, nearest, panelDomain, panelTicks } from './panel.ts'

const left = 52
const right = 12
const head = 22
const body = 104
/** Of a picture that stands alone. */
const alone = 150
const gap = 18
const foot = 30

/** Two columns from this width on, and what is between them. */
const wide = 760
const apartBy = 28

/** In columns of one width: where each begins, and its panels, of which the first column has the more. */
export function columnsOf<T>(panels: readonly T[], width: number): { start: number; width: number; panels: T[] }[] {
  const count = width >= wide && panels.length > 1 ? 2 : 1
  const each = (width - (count - 1) * apartBy) / count
  const rows = Math.ceil(panels.length / count)
  return Array.from({ length: count }, (_, i) => ({
    start: i * (each + apartBy),
    width: each,
    panels: panels.slice(i * rows, (i + 1) * rows),
  }))
}

interface Multiples {
  panels: CurvePanel[]
  x: readonly number[]
  /** From left to right, in the axis' unit; may fall. */
  domain: [number, number]
  unit: string
  width: number
  label: string
  /** Value along x at which the cursor stands. */
  cursor: number
  /** With the index of the nearest place. */
  onCursor(index: number): void
  /** A value along x worth a line of its own. */
  mark?: { at: number; text: string } | null
}

/**
 * Small pictures on one scale along x, under each other and where there is room in two columns, with one cursor through all of
 * them. Who presses into them moves the cursor.
 */
export function SmallMultiples(props: Multiples) {
  const { panels, x, domain, width } = props
  const svg = useRef<SVGSVGElement>(null)
  const columns = columnsOf(panels, width)
  const each = panels.length === 1 ? alone : body
  const height = columns[0]!.panels.length * (head + each + gap) - gap + foot
  const point = (event: PointerEvent<SVGSVGElement>) => {
    if (event.pointerType === 'mouse' && event.buttons === 0 && event.type !== 'pointerdown') return
    const box = svg.current!.getBoundingClientRect()
    const at = ((event.clientX - box.left) / box.width) * width
    const column = columns.findLast(({ start }) => at >= start) ?? columns[0]!
    props.onCursor(nearest(x, linearScale(domain, [left, column.width - right]), at - column.start))
  }
  return (
    <svg
      ref={svg}
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={props.label}
      className="curves"
      onPointerDown={point}
      onPointerMove={point}
    >
      <rect x={0} y={0} width={width} height={height} fill="transparent" />
      {columns.map((column) => (
        <g key={column.start} transform={column.start === 0 ? undefined : `translate(${pixel(column.start)} 0)`}>
          <Column {...props} panels={column.panels} width={column.width} each={each} />
        </g>
      ))}
    </svg>
  )
}

/** `each`: height of a panel's picture (px). */
function Column({ panels, x, domain, unit, width, cursor, mark, each }: Multiples & { each: number }) {
  const scale = linearScale(domain, [left, width - right])
  const topOf = (index: number) => index * (head + each + gap) + head
  const bottom = panels.length * (head + each + gap) - gap
  return (
    <>
      <path d={`M${pixel(scale(cursor))} ${head - 4}V${bottom}`} className="cursor" aria-hidden="true" />
      {panels.map((panel, index) => (
        <Fragment key={panel.id}>
          <Panel {...{ panel, x, width }} from={domain[0]} to={domain[1]} y={topOf(index)} height={each} />
          <Readings {...{ panel, x, scale, cursor }} y={topOf(index)} height={each} />
        </Fragment>
      ))}
      {mark && (
        <g aria-hidden="true">
          <path d={`M${pixel(scale(mark.at))} ${head}V${bottom}`} className="limit" />
          <text
            x={pixel(scale(mark.at) + (scale(mark.at) > width / 2 ? -6 : 6))}
            y={head + each - 8}
            textAnchor={scale(mark.at) > width / 2 ? 'end' : 'start'}
            className="halo measure"
          >
            {mark.text}
          </text>
        </g>
      )}
      <TimeScale scale={scale} domain={domain} y={bottom + 6} width={width} unit={unit} />
    </>
  )
}

/** A panel without its cursor, which alone moves: drawn again only for other curves or another width. */
const Panel = memoWords(function Panel(props: {
  panel: CurvePanel
  x: readonly number[]
  from: number
  to: number
  y: number
  height: number
  width: number
}) {
  const { panel, x, y, width } = props
  const scale = linearScale([props.from, props.to], [left, width - right])
  const domain = panelDomain(panel)
  const up = linearScale(domain, [y + props.height, y])
  const end = width - right
  const labels = limitLabels(panel, { x, scale, up, left, right: end, top: y, bottom: y + props.height - 4 })
  const far = farLimits(panel).map(({ value, text }) => `${text} ${value > domain[1] ? '↑' : '↓'}`)
  return (
    <g aria-hidden="true">
      <text x={left} y={y - 8} className="halo measure strong">
        {`${panel.name} (${panel.unit})`}
      </text>
      <text x={end} y={y - 8} textAnchor="end" className="halo measure soft">
        {far.join(', ')}
      </text>
      {panelTicks(domain, panel.factor, 4).map((tick) => (
        <g key={tick}>
          <path d={`M${left} ${pixel(up(tick))}H${end}`} className="grid" />
          <text x={left - 6} y={pixel(up(tick) + 4)} textAnchor="end" className="measure soft">
            {plain(tick / panel.factor, 3)}
          </text>
        </g>
      ))}
      {labels.map(({ id, text, line, at, left: before }) => (
        <g key={id}>
          <path d={`M${left} ${pixel(line)}H${end}`} className="limit" />
          <text
            x={before ? left + 4 : end - 2}
            y={pixel(at)}
            textAnchor={before ? 'start' : 'end'}
            className="halo measure"
          >
            {text}
          </text>
        </g>
      ))}
      {panel.lines.map(({ id, values }, index) => (
        <path
          key={id}
          d={`M${values.map((value, i) => `${pixel(scale(x[i]!))} ${pixel(up(value))}`).join('L')}`}
          className="curve"
          style={{ stroke: `var(--series-${index + 1})` }}
          strokeDasharray={dashOf(index)}
        />
      ))}
    </g>
  )
})

/** Where the cursor meets the panel's lines. */
function Readings(
  props: Pick<Multiples, 'x' | 'cursor'> & { panel: CurvePanel; scale: Scale; y: number; height: number },
) {
  const { panel, x, cursor, scale, y, height } = props
  const up = linearScale(panelDomain(panel), [y + height, y])
  return (
    <g aria-hidden="true">
      {panel.lines.map(({ id, values }, index) => (
        <circle
          key={id}
          cx={pixel(scale(cursor))}
          cy={pixel(up(between(x, values, cursor)))}
          r="4.5"
          className="reading"
          style={{ fill: `var(--series-${index + 1})` }}
        />
      ))}
    </g>
  )
}
