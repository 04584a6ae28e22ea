import { type PointerEvent, useRef } from 'react'
import { plain } from '../../../words/format.ts'
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

/**
 * Small pictures under each other on one scale along x, with one cursor through all of them. Who points into them moves the
 * cursor; `share` is its place along x, 0 to 1.
 */
export function SmallMultiples(props: {
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
}) {
  const { panels, x, domain, width, mark } = props
  const svg = useRef<SVGSVGElement>(null)
  const scale = linearScale(domain, [left, width - right])
  const each = panels.length === 1 ? alone : body
  const height = panels.length * (head + each + gap) - gap + foot
  const point = (event: PointerEvent<SVGSVGElement>) => {
    if (event.pointerType === 'mouse' && event.buttons === 0 && event.type !== 'pointerdown') return
    const box = svg.current!.getBoundingClientRect()
    props.onCursor(nearest(x, scale, ((event.clientX - box.left) / box.width) * width))
  }
  const at = scale(props.cursor)
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
      {panels.map((panel, index) => (
        <Panel
          key={panel.id}
          panel={panel}
          x={x}
          scale={scale}
          y={index * (head + each + gap) + head}
          height={each}
          width={width}
          cursor={props.cursor}
        />
      ))}
      {mark && (
        <g aria-hidden="true">
          <path d={`M${pixel(scale(mark.at))} ${head}V${height - foot}`} className="limit" />
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
      <path d={`M${pixel(at)} ${head - 4}V${height - foot}`} className="cursor" aria-hidden="true" />
      <TimeScale scale={scale} domain={domain} y={height - foot + 6} width={width} unit={props.unit} />
    </svg>
  )
}

function Panel(props: {
  panel: CurvePanel
  x: readonly number[]
  scale: Scale
  y: number
  height: number
  width: number
  cursor: number
}) {
  const { panel, x, scale, y, width } = props
  const domain = panelDomain(panel)
  const up = linearScale(domain, [y + props.height, y])
  const end = width - right
  const labels = limitLabels(panel, { x, scale, up, left, right: end, top: y })
  const far = farLimits(panel).map(({ value, text }) => `${text} ${value > domain[1] ? '↑' : '↓'}`)
  return (
    <g aria-hidden="true">
      <text x={left} y={y - 8} className="measure strong">
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
      {panel.lines.map(({ id, values }, index) => (
        <circle
          key={id}
          cx={pixel(scale(props.cursor))}
          cy={pixel(up(between(x, values, props.cursor)))}
          r="4.5"
          className="reading"
          style={{ fill: `var(--series-${index + 1})` }}
        />
      ))}
    </g>
  )
}
