import { useId } from 'react'
import { points, seconds, signedPoints } from '../words/format.ts'
import { Hatch } from './Hatch.tsx'
import { linearScale, pixel } from './scale.ts'
import type { StripBar, StripLayout } from './stripLayout.ts'
import { TimeScale } from './TimeScale.tsx'

export interface StripHandlers {
  selected: { leg: string; stage: string } | null
  onSelect(bar: StripBar): void
  /** The person draws the bar's end to this mean (s). */
  onMean?(bar: StripBar, mean: number): void
  /** The person asks for so many seconds more or less, by a key. The bar may be behind what was typed already. */
  onStep?(bar: StripBar, seconds: number): void
  canChange?(bar: StripBar): boolean
}

const laneHeight = 46
const barHeight = 36
const top = 30

/** What the bar says, for people who do not see it. */
export function barWords(bar: StripBar): string {
  const path = bar.critical ? 'on the critical path' : `${seconds(bar.floatUntil - bar.finish)} of float`
  const worth = bar.worth === null ? '' : `, a second less is worth ${points(bar.worth)} points a match`
  return `${bar.name}: ${seconds(bar.mean)}, ${path}${worth}`
}

/** The signature picture: one cycle as bars over time. Solid: critical path. Hatched: float. */
export function CycleStrip(props: { layout: StripLayout; width: number; stale?: boolean; handlers?: StripHandlers }) {
  const { layout, width, handlers } = props
  const id = useId()
  const scale = linearScale([0, Math.max(layout.end, 0.1)], [4, width - 14])
  const height = top + layout.lanes * laneHeight + 30
  return (
    <svg
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="group"
      aria-label="Cycle strip"
      style={props.stale ? { opacity: 0.45 } : undefined}
    >
      <defs>
        <Hatch id={`${id}float`} />
      </defs>
      {layout.sections.map((section) => (
        <g key={section.leg}>
          <line
            x1={pixel(scale(section.start))}
            x2={pixel(scale(section.start))}
            y1={4}
            y2={height - 30}
            style={{ stroke: 'var(--rule-strong)' }}
            strokeDasharray="2 3"
          />
          <SectionName section={section} x={scale(section.start)} room={scale(section.finish) - scale(section.start)} />
          {section.pieces.map((at) => (
            <path
              key={at}
              d={`M${pixel(scale(at))} ${height - 31}l-4 -7h8z`}
              style={{ fill: 'var(--note)' }}
              aria-hidden="true"
            />
          ))}
        </g>
      ))}
      {layout.bars.map((bar) => (
        <Bar key={`${bar.leg}/${bar.stage}`} bar={bar} scale={scale} hatch={`${id}float`} handlers={handlers} />
      ))}
      <TimeScale scale={scale} domain={[0, layout.end]} y={height - 28} width={width} unit="s" />
    </svg>
  )
}

function SectionName(props: { section: StripLayout['sections'][number]; x: number; room: number }) {
  const { name, mean } = props.section
  const long = `${name}: ${seconds(mean)}`
  const text = long.length * 6.8 < props.room ? long : name.length * 6.8 < props.room ? name : seconds(mean)
  return (
    <text x={pixel(props.x + 5)} y={15} fontSize="13" fontWeight="600">
      {text}
    </text>
  )
}

function Bar(props: { bar: StripBar; scale: ReturnType<typeof linearScale>; hatch: string; handlers?: StripHandlers }) {
  const { bar, scale, handlers } = props
  const x = scale(bar.start)
  const end = Math.max(scale(bar.finish), x + 3)
  const y = top + bar.lane * laneHeight
  const selected = handlers?.selected?.leg === bar.leg && handlers.selected.stage === bar.stage
  const changeable = Boolean(handlers?.onMean && (handlers.canChange?.(bar) ?? true))
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: it has the role of a slider or a button, chosen below
    <g
      {...(changeable
        ? {
            role: 'slider',
            'aria-valuenow': Number(bar.mean.toFixed(1)),
            'aria-valuemin': 0,
            'aria-valuemax': 150,
            'aria-valuetext': barWords(bar),
          }
        : { role: handlers ? 'button' : 'img' })}
      aria-label={changeable ? `${bar.name}, seconds` : barWords(bar)}
      tabIndex={handlers ? 0 : undefined}
      data-stage={bar.stage}
      data-leg={bar.leg}
      style={{ cursor: handlers ? 'pointer' : undefined }}
      onClick={() => handlers?.onSelect(bar)}
      onFocus={() => handlers?.onSelect(bar)}
      onKeyDown={(event) => {
        const step = { ArrowRight: 0.1, ArrowUp: 0.1, ArrowLeft: -0.1, ArrowDown: -0.1, PageUp: 0.5, PageDown: -0.5 }[
          event.key
        ]
        if (step === undefined || !changeable) return
        event.preventDefault()
        handlers?.onStep?.(bar, step * (event.shiftKey ? 5 : 1))
      }}
    >
      {bar.floatUntil > bar.finish + 0.02 && (
        <rect
          x={pixel(end)}
          y={y + 9}
          width={pixel(Math.max(0, scale(bar.floatUntil) - end))}
          height={barHeight - 18}
          fill={`url(#${props.hatch})`}
          style={{ stroke: 'var(--hatch)' }}
          strokeWidth="0.75"
        />
      )}
      <rect
        x={pixel(x)}
        y={y}
        width={pixel(Math.max(1.5, end - x - 1.5))}
        height={barHeight}
        rx={2}
        style={{
          fill: bar.critical ? 'var(--deep)' : 'var(--shoal)',
          stroke: selected ? 'var(--note)' : 'var(--deep)',
        }}
        strokeWidth={selected ? 3 : 1}
      />
      <BarText bar={bar} x={x} y={y} room={end - x} />
      {changeable && (
        <BarEnd
          bar={bar}
          x={end}
          y={y}
          secondsPerPixel={scale.invert(1) - scale.invert(0)}
          onMean={handlers!.onMean!}
        />
      )}
    </g>
  )
}

/** As much of a name as fits, at least three letters of it. */
function shortened(name: string, room: number, size: number): string {
  const letters = Math.floor((room - 8) / (size * 0.54))
  if (name.length <= letters) return name
  return letters >= 4 ? `${name.slice(0, letters - 1).trimEnd()}…` : ''
}

function BarText(props: { bar: StripBar; x: number; y: number; room: number }) {
  const { bar, x, y, room } = props
  const fill = bar.critical ? 'var(--on-deep)' : 'var(--ink)'
  const time = seconds(bar.mean)
  const worth = bar.worth === null ? '' : `${signedPoints(bar.worth)}/s`
  const fits = (text: string) => text.length * 12 * 0.54 < room - 6
  const first = shortened(bar.name, room, 13)
  const second = [worth ? `${time} · ${worth}` : time, time, bar.mean.toFixed(1)].find(fits) ?? ''
  return (
    <g aria-hidden="true" style={{ pointerEvents: 'none' }}>
      <text x={pixel(x + 4)} y={y + 15} fontSize="13" fontWeight="600" style={{ fill }}>
        {first}
      </text>
      <text x={pixel(x + 4)} y={y + (first ? 30 : 23)} fontSize="12" style={{ fill }}>
        {second}
      </text>
    </g>
  )
}

/** The bar's end, to be dragged. Wide enough for a thumb; the arrow keys on the bar do the same. */
function BarEnd(props: {
  bar: StripBar
  x: number
  y: number
  secondsPerPixel: number
  onMean: NonNullable<StripHandlers['onMean']>
}) {
  const { bar, x, y, secondsPerPixel } = props
  return (
    <rect
      data-end=""
      aria-hidden="true"
      x={pixel(x - 8)}
      y={y}
      width={16}
      height={barHeight}
      fill="transparent"
      style={{ cursor: 'ew-resize', touchAction: 'none' }}
      onPointerDown={(event) => {
        event.preventDefault()
        const target = event.currentTarget
        const startX = event.clientX
        const rate = secondsPerPixel
        target.setPointerCapture(event.pointerId)
        const move = (moved: PointerEvent) =>
          props.onMean(bar, Math.max(0, Math.round((bar.mean + (moved.clientX - startX) * rate) * 10) / 10))
        const stop = () => {
          target.removeEventListener('pointermove', move)
          target.removeEventListener('pointerup', stop)
          target.removeEventListener('pointercancel', stop)
        }
        target.addEventListener('pointermove', move)
        target.addEventListener('pointerup', stop)
        target.addEventListener('pointercancel', stop)
      }}
    />
  )
}
