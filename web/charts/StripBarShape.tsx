import { useRef } from 'react'
import { pressed } from '../shell/shortcuts.ts'
import { words } from '../words/catalogue.ts'
import { decimal } from '../words/decimal.ts'
import { points, seconds, signedPoints } from '../words/format.ts'
import type { StripHandlers } from './CycleStrip.tsx'
import { pixel, type Scale } from './scale.ts'
import type { StripBar } from './stripLayout.ts'

const barHeight = 36

/** A press on the bar's end; `rate`: seconds of a pixel on the screen. */
interface Press {
  id: number
  x: number
  rate: number
  dragging: boolean
}

/** What the bar says, for people who do not see it. */
export function barWords(bar: StripBar): string {
  const texts = words().strip
  const parts = [
    texts.bar(bar.name, seconds(bar.mean)),
    ...(bar.repeats > 1 ? [texts.repeated(bar.repeats)] : []),
    bar.critical ? texts.onPath : texts.float(seconds(bar.floatUntil - bar.finish)),
    ...(bar.worth === null ? [] : [texts.worth(points(bar.worth))]),
    ...(bar.hardware ? [words().timings.bar[bar.hardware]] : []),
  ]
  return parts.join(', ')
}

/** By how much a key changes the bar (s). */
const steps = { barLonger: 0.1, barShorter: -0.1, barMuchLonger: 0.5, barMuchShorter: -0.5 } as const

/** A bar: a slider of its stage's seconds where they can be changed, a button that opens its numbers otherwise. */
export function StripBarShape(props: {
  bar: StripBar
  scale: Scale
  y: number
  hatch: string
  handlers?: StripHandlers
}) {
  const { bar, scale, y, handlers } = props
  const x = scale(bar.start)
  const end = Math.max(scale(bar.finish), x + 3)
  const selected = handlers?.selected?.leg === bar.leg && handlers.selected.stage === bar.stage
  const changeable = Boolean(handlers?.onDrag && (handlers.canChange?.(bar) ?? true))
  const whole = pixel(Math.max(1.5, end - x - 1.5))
  const press = useRef<Press | null>(null)
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: it has the role of a slider or a button, chosen below
    <g
      {...(changeable
        ? {
            role: 'slider',
            'aria-valuenow': Math.round(bar.mean * 10) / 10,
            'aria-valuemin': 0,
            'aria-valuemax': 150,
            'aria-valuetext': barWords(bar),
          }
        : { role: handlers ? 'button' : 'img' })}
      aria-label={changeable ? words().strip.slider(bar.name) : barWords(bar)}
      tabIndex={handlers ? 0 : undefined}
      data-stage={bar.stage}
      data-leg={bar.leg}
      className={handlers ? 'strip-bar' : undefined}
      style={{ cursor: handlers ? 'pointer' : undefined }}
      onClick={() => handlers?.onSelect(bar)}
      onFocus={() => handlers?.onSelect(bar)}
      onBlur={() => handlers?.onStill?.()}
      onKeyDown={(event) => {
        if (press.current?.dragging && pressed(event, 'barCancel')) {
          press.current = null
          handlers?.onCancel?.()
        } else if (handlers) act(event, bar, changeable, handlers)
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
        width={whole}
        height={barHeight}
        rx={2}
        style={{
          fill: bar.critical ? 'var(--deep)' : 'var(--shoal)',
          stroke: selected ? 'var(--note)' : 'var(--deep)',
        }}
        strokeWidth={selected ? 3 : 1}
      />
      {bar.repeats > 1 && <Repeats bar={bar} x={x} width={whole} y={y} />}
      {bar.hardware && <HardwareSign bar={bar} x={end} y={y} room={end - x} />}
      <BarText bar={bar} x={x} y={y} room={end - x} />
      {changeable && handlers && <BarEnd {...{ bar, y, scale, handlers, press }} from={x} x={end} />}
    </g>
  )
}

function act(event: React.KeyboardEvent, bar: StripBar, changeable: boolean, handlers: StripHandlers): void {
  const exchange = pressed(event, 'barEarlier', 'barLater')
  if (exchange && handlers.onExchange) {
    event.preventDefault()
    handlers.onExchange(bar, exchange === 'barEarlier' ? -1 : 1)
    return
  }
  if (pressed(event, 'barRemove') && handlers.onRemove) {
    event.preventDefault()
    const group = event.currentTarget
    handlers.onRemove(bar)
    // The keyboard stays on the strip.
    const beside = [group.previousElementSibling, group.nextElementSibling].find((other) =>
      other?.matches('[data-stage]'),
    )
    if (bar.stage !== 'drive') (beside as SVGGElement | undefined)?.focus()
    return
  }
  const step = pressed(event, 'barLonger', 'barShorter', 'barMuchLonger', 'barMuchShorter')
  if (!step || !changeable) return
  event.preventDefault()
  handlers.onStep?.(bar, steps[step])
}

/** Lines through the bar of what is done once per piece. */
function Repeats(props: { bar: StripBar; x: number; width: number; y: number }) {
  const { bar, x, width, y } = props
  return Array.from({ length: Math.min(bar.repeats, 40) - 1 }, (_, index) => {
    const at = pixel(x + (width * (index + 1)) / bar.repeats)
    return (
      <line
        key={at}
        x1={at}
        x2={at}
        y1={y}
        y2={y + barHeight}
        style={{ stroke: bar.critical ? 'var(--on-deep)' : 'var(--deep)' }}
        strokeWidth="1.5"
        strokeDasharray="3 2"
        aria-hidden="true"
      />
    )
  })
}

/** As much of a name as fits, at least three letters of it. */
function shortened(name: string, room: number, size: number): string {
  const letters = Math.floor((room - 8) / (size * 0.54))
  if (name.length <= letters) return name
  return letters >= 4 ? `${name.slice(0, letters - 1).trimEnd()}…` : ''
}

/** A toothed wheel on the bar's upper end: its time comes from hardware; only outlined where its own stands beside it. */
function HardwareSign(props: { bar: StripBar; x: number; y: number; room: number }) {
  const { bar, x, y, room } = props
  if (room < 14) return null
  const [cx, cy] = [pixel(x - 8), y + 8]
  const ink = bar.critical ? 'var(--on-deep)' : 'var(--ink)'
  return (
    <g aria-hidden="true" data-hardware={bar.hardware} style={{ pointerEvents: 'none', stroke: ink }}>
      <circle cx={cx} cy={cy} r={5} fill="none" strokeWidth="2" strokeDasharray="2 1.93" />
      <circle cx={cx} cy={cy} r={2.5} strokeWidth="1" style={{ fill: bar.hardware === 'follows' ? ink : 'none' }} />
    </g>
  )
}

function BarText(props: { bar: StripBar; x: number; y: number; room: number }) {
  const { bar, x, y, room } = props
  const fill = bar.critical ? 'var(--on-deep)' : 'var(--ink)'
  const time = seconds(bar.mean)
  const worth = bar.worth === null ? '' : words().strip.perSecond(signedPoints(bar.worth))
  const fits = (text: string) => text.length * 12 * 0.54 < room - 6
  const first = shortened(bar.name, bar.hardware ? room - 12 : room, 13)
  const times = bar.repeats > 1 ? `${time} · ×\u00a0${bar.repeats}` : time
  const choices = [
    worth ? `${times} · ${worth}` : times,
    worth ? `${time} · ${worth}` : time,
    time,
    decimal(bar.mean, 1),
  ]
  const second = choices.find(fits) ?? ''
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

/** Pixels below which a press is no drag. */
const still = 3

/**
 * The bar's end, to be dragged. Wide enough for a thumb, but never over the end of the bar before a narrow one; the arrow
 * keys on the bar do the same.
 */
function BarEnd(props: {
  bar: StripBar
  from: number
  x: number
  y: number
  scale: Scale
  handlers: StripHandlers
  press: React.RefObject<Press | null>
}) {
  const { bar, from, x, y, scale, handlers, press } = props
  const left = Math.max(x - 20, (from + x) / 2)
  return (
    <rect
      data-end=""
      aria-hidden="true"
      x={pixel(left)}
      y={y - 4}
      width={pixel(x + 12 - left)}
      height={barHeight + 8}
      fill="transparent"
      style={{ cursor: 'ew-resize', touchAction: 'none' }}
      onPointerDown={(event) => {
        if (event.button !== 0) return
        event.preventDefault()
        const target = event.currentTarget
        target.closest<SVGGElement>('[tabindex]')?.focus({ preventScroll: true })
        target.setPointerCapture(event.pointerId)
        const drawn = target.ownerSVGElement
        // The picture may be drawn smaller than it was made.
        const shown = drawn ? drawn.getBoundingClientRect().width / drawn.width.baseVal.value : 1
        const rate = (scale.invert(1) - scale.invert(0)) / (shown || 1)
        press.current = { id: event.pointerId, x: event.clientX, rate, dragging: false }
      }}
      onPointerMove={(event) => {
        const begun = press.current
        if (begun?.id !== event.pointerId) return
        const by = event.clientX - begun.x
        begun.dragging ||= Math.abs(by) > still
        if (begun.dragging) handlers.onDrag?.(bar, by * begun.rate)
      }}
      onPointerUp={() => {
        if (press.current?.dragging) handlers.onDrop?.()
        press.current = null
      }}
      onPointerCancel={() => {
        if (press.current?.dragging) handlers.onCancel?.()
        press.current = null
      }}
    />
  )
}
