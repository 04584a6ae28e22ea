import { useId } from 'react'
import { words } from '../words/catalogue.ts'
import { seconds } from '../words/format.ts'
import { Hatch } from './Hatch.tsx'
import { linearScale, pixel } from './scale.ts'
import { TimeScale } from './TimeScale.tsx'

export interface LeaveRow {
  id: string
  name: string
  finish: string
  /** Seconds left: best from, at the latest, and when it stops being the best. */
  from: number
  latest: number
  to: number
}

const rowHeight = 44
const barHeight = 18

/** When to leave for the finish from each place: the end of the match, running down to the buzzer on the right. */
export function LeaveStrip(props: { rows: LeaveRow[]; call: number | null; endgame: number; width: number }) {
  const { rows, call, endgame, width } = props
  const id = useId()
  const text = words().charts
  const first = Math.max(endgame, call ?? 0, ...rows.map(({ from }) => from)) * 1.1
  const scale = linearScale([first, 0], [6, width - 12])
  const top = call === null ? 4 : 22
  const bottom = top + rows.length * rowHeight
  const said = rows.map((row) => `${row.name}: ${text.leaveRow(seconds(row.from), seconds(row.latest))}`).join('; ')
  return (
    <svg
      width={width}
      height={bottom + 30}
      viewBox={`0 0 ${width} ${bottom + 30}`}
      role="img"
      aria-label={`${text.leave}. ${said}`}
    >
      <defs>
        <Hatch id={`${id}late`} gap={6} />
      </defs>
      {call !== null && (
        <>
          <line
            x1={pixel(scale(call))}
            x2={pixel(scale(call))}
            y1={14}
            y2={bottom}
            style={{ stroke: 'var(--note)' }}
            strokeWidth="1.5"
            strokeDasharray="5 3"
          />
          <path d={`M${pixel(scale(call) - 6)} 4h12l-6 10z`} style={{ fill: 'var(--note)' }} />
          <text
            x={pixel(scale(call) + (scale(call) > width - 110 ? -10 : 10))}
            y={13}
            fontSize="12.5"
            textAnchor={scale(call) > width - 110 ? 'end' : 'start'}
          >
            {text.call} {seconds(call)}
          </text>
        </>
      )}
      {rows.map((row, index) => (
        <Row key={row.id} row={row} y={top + index * rowHeight} scale={scale} hatch={`${id}late`} />
      ))}
      <TimeScale scale={scale} domain={[first, 0]} y={bottom + 4} width={width} unit={text.timeLeft} />
    </svg>
  )
}

function Row(props: { row: LeaveRow; y: number; scale(value: number): number; hatch: string }) {
  const { row, y, scale, hatch } = props
  const bar = (from: number, to: number) => ({
    x: pixel(scale(from)),
    y: y + 18,
    width: pixel(Math.max(0, scale(to) - scale(from))),
    height: barHeight,
  })
  return (
    <g>
      <text x={6} y={y + 13} fontSize="13" className="halo">
        {row.name} → {row.finish}
      </text>
      <rect
        {...bar(row.from, Math.max(row.to, row.latest))}
        style={{ fill: 'var(--deep)', stroke: 'var(--ink)' }}
        strokeWidth="0.75"
      />
      {row.latest > row.to && (
        <>
          <rect {...bar(row.latest, row.to)} style={{ fill: 'var(--land)', stroke: 'var(--ink)' }} strokeWidth="0.75" />
          <rect {...bar(row.latest, row.to)} fill={`url(#${hatch})`} />
        </>
      )}
    </g>
  )
}
