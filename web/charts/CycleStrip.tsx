import { useEffect, useId, useRef } from 'react'
import { words } from '../words/catalogue.ts'
import { seconds } from '../words/format.ts'
import { Hatch } from './Hatch.tsx'
import { StripBarShape } from './StripBarShape.tsx'
import { linearScale, pixel } from './scale.ts'
import type { StripBar, StripLayout } from './stripLayout.ts'
import { TimeScale } from './TimeScale.tsx'

export interface StripHandlers {
  selected: { leg: string; stage: string } | null
  onSelect(bar: StripBar): void
  /** The person draws the bar's end so many seconds from where it was. Nothing is kept before the drop. */
  onDrag?(bar: StripBar, seconds: number): void
  onDrop?(): void
  onCancel?(): void
  /** The person asks for so many seconds more or less, by a key. The bar may be behind what was typed already. */
  onStep?(bar: StripBar, seconds: number): void
  /** The keys went still. */
  onStill?(): void
  /** Change places with the stage before (−1) or after (1). */
  onExchange?(bar: StripBar, direction: -1 | 1): void
  onRemove?(bar: StripBar): void
  canChange?(bar: StripBar): boolean
}

const top = 30
const laneHeight = 46

/**
 * The signature picture: one cycle as bars over time. Solid: critical path. Hatched: float. `until`: the scale ends there
 * (s), so that two strips share it and a drag does not move it under the finger.
 */
export function CycleStrip(props: {
  layout: StripLayout
  width: number
  name?: string
  until?: number
  stale?: boolean
  handlers?: StripHandlers
}) {
  const { layout, width, handlers } = props
  const id = useId()
  const drawing = useRef<SVGSVGElement>(null)
  const end = Math.max(layout.end, props.until ?? 0, 0.1)
  const scale = linearScale([0, end], [4, width - 14])
  const height = top + layout.lanes * laneHeight + 30
  const draggable = handlers?.onDrag !== undefined

  // A finger on a bar's end does not scroll the page. Said here because touch-action is not heeded on shapes of SVG.
  useEffect(() => {
    const svg = drawing.current
    if (!svg || !draggable) return
    const hold = (event: TouchEvent) => {
      if ((event.target as Element).closest('[data-end]')) event.preventDefault()
    }
    svg.addEventListener('touchstart', hold, { passive: false })
    return () => svg.removeEventListener('touchstart', hold)
  }, [draggable])

  return (
    <svg
      ref={drawing}
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="group"
      aria-label={props.name ?? words().strip.title}
      style={props.stale ? { opacity: 0.45 } : undefined}
      className={handlers ? 'strip-desk' : undefined}
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
        <StripBarShape
          key={`${bar.leg}/${bar.stage}`}
          bar={bar}
          scale={scale}
          y={top + bar.lane * laneHeight}
          hatch={`${id}float`}
          handlers={handlers}
        />
      ))}
      <TimeScale scale={scale} domain={[0, end]} y={height - 28} width={width} unit="s" />
    </svg>
  )
}

function SectionName(props: { section: StripLayout['sections'][number]; x: number; room: number }) {
  const { name, mean } = props.section
  const long = words().strip.bar(name, seconds(mean))
  const text = long.length * 6.8 < props.room ? long : name.length * 6.8 < props.room ? name : seconds(mean)
  return (
    <text x={pixel(props.x + 5)} y={15} fontSize="13" fontWeight="600">
      {text}
    </text>
  )
}
