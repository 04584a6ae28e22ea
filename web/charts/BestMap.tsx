import { useId, useMemo } from 'react'
import { words } from '../words/catalogue.ts'
import { seriesColour, seriesLetter } from './DotPlot.tsx'
import { type MapRows, mapRegions } from './mapRegions.ts'
import { OptionPattern } from './OptionPattern.tsx'
import { linearScale, pixel, ticks } from './scale.ts'

/** One side of the map: its ends, its most likely value, and how a value is written. */
export interface MapSide {
  name: string
  low: number
  high: number
  likely: number
  tick(value: number): string
}

const bottom = 40
const top = 24

/** Which option is best where over two unknowns: regions in patterns, their border, and what is believed most likely. */
export function BestMap(props: {
  rows: MapRows
  x: MapSide
  y: MapSide
  names: readonly string[]
  width: number
  /** The place that is read, as shares of the sides. */
  read: readonly [number, number] | null
  onRead(place: readonly [number, number]): void
}) {
  const { rows, x, y, width, read } = props
  const id = useId()
  const left = width < 480 ? 62 : 84
  const height = Math.round(Math.min(440, Math.max(260, width * 0.72)))
  const frame = { left, right: width - 10, top, bottom: height - bottom }
  const last = rows.length - 1
  const regions = useMemo(
    () =>
      mapRegions(
        rows,
        linearScale([0, last], [frame.left, frame.right]),
        linearScale([0, last], [frame.bottom, frame.top]),
      ),
    [rows, last, frame.left, frame.right, frame.bottom, frame.top],
  )
  const across = linearScale([x.low, x.high], [frame.left, frame.right])
  const up = linearScale([y.low, y.high], [frame.bottom, frame.top])
  const text = words().charts
  const where = props.names
    .map((name, option) => `${name} ${Math.round((regions.shares[option] ?? 0) * 100)} %`)
    .join(', ')
  const touch = (event: React.PointerEvent<SVGRectElement>) => {
    const box = event.currentTarget.getBoundingClientRect()
    const share = (value: number) => Math.min(1, Math.max(0, value))
    props.onRead([
      share((event.clientX - box.left) / (box.width || 1)),
      share((box.bottom - event.clientY) / (box.height || 1)),
    ])
  }
  return (
    <svg
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={text.map(x.name, y.name, where)}
    >
      <defs>
        {props.names.map((name, option) => (
          <OptionPattern key={name} id={`${id}${option}`} index={option} />
        ))}
      </defs>
      {regions.areas.map(
        (area, option) => area && <path key={props.names[option]} d={area} fill={`url(#${id}${option})`} />,
      )}
      <path d={regions.border} fill="none" style={{ stroke: 'var(--note)' }} strokeWidth="2.5" strokeLinecap="round" />
      <Sides x={x} y={y} frame={frame} across={across} up={up} />
      {regions.labels.map(
        (label, option) =>
          label && (
            <text
              key={props.names[option]}
              x={label.x}
              y={label.y + 7}
              fontSize="22"
              fontWeight="700"
              textAnchor="middle"
              className="halo"
              style={{ fill: seriesColour(option) }}
            >
              {seriesLetter(option)}
            </text>
          ),
      )}
      <Likely x={pixel(across(x.likely))} y={pixel(up(y.likely))} right={frame.right} text={text.likely} />
      {read && (
        <Cross
          x={frame.left + read[0] * (frame.right - frame.left)}
          y={frame.bottom - read[1] * (frame.bottom - frame.top)}
          frame={frame}
        />
      )}
      <rect
        x={frame.left}
        y={frame.top}
        width={frame.right - frame.left}
        height={frame.bottom - frame.top}
        fill="transparent"
        style={{ cursor: 'crosshair' }}
        onPointerDown={touch}
        onPointerMove={(event) => event.buttons > 0 && touch(event)}
      />
    </svg>
  )
}

interface Frame {
  left: number
  right: number
  top: number
  bottom: number
}

function Sides(props: {
  x: MapSide
  y: MapSide
  frame: Frame
  across(value: number): number
  up(value: number): number
}) {
  const { x, y, frame, across, up } = props
  const wide = frame.right - frame.left
  return (
    <>
      <rect
        x={frame.left}
        y={frame.top}
        width={wide}
        height={frame.bottom - frame.top}
        fill="none"
        style={{ stroke: 'var(--rule-strong)' }}
      />
      {ticks([x.low, x.high], Math.max(2, Math.floor(wide / 100))).map((tick) => (
        <text
          key={tick}
          x={pixel(across(tick))}
          y={frame.bottom + 17}
          fontSize="12"
          textAnchor="middle"
          className="soft"
        >
          {x.tick(tick)}
        </text>
      ))}
      {ticks([y.low, y.high], 5).map((tick) => (
        <text key={tick} x={frame.left - 6} y={pixel(up(tick) + 4)} fontSize="12" textAnchor="end" className="soft">
          {y.tick(tick)}
        </text>
      ))}
      <text x={frame.right} y={frame.bottom + 35} fontSize="13" textAnchor="end">
        {x.name} →
      </text>
      <text x={2} y={14} fontSize="13">
        ↑ {y.name}
      </text>
    </>
  )
}

/** What is believed most likely: a ring with a point, its words on the side where there is room. */
function Likely(props: { x: number; y: number; right: number; text: string }) {
  const { x, y } = props
  const atRight = x > props.right - 90
  return (
    <g>
      <circle cx={x} cy={y} r="7" style={{ fill: 'var(--sheet)', stroke: 'var(--ink)' }} strokeWidth="2" />
      <circle cx={x} cy={y} r="2.5" style={{ fill: 'var(--ink)' }} />
      <text
        x={x + (atRight ? -12 : 12)}
        y={y - 8}
        fontSize="13"
        textAnchor={atRight ? 'end' : 'start'}
        className="halo"
      >
        {props.text}
      </text>
    </g>
  )
}

function Cross(props: { x: number; y: number; frame: Frame }) {
  const { frame } = props
  const [x, y] = [pixel(props.x), pixel(props.y)]
  return (
    <g style={{ stroke: 'var(--ink)' }} strokeWidth="1.25" strokeDasharray="4 3">
      <line x1={x} x2={x} y1={frame.top} y2={frame.bottom} />
      <line x1={frame.left} x2={frame.right} y1={y} y2={y} />
    </g>
  )
}
