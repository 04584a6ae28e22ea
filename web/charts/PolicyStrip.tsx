import { useId } from 'react'
import { words } from '../words/catalogue.ts'
import { Hatch } from './Hatch.tsx'
import { linearScale, pixel } from './scale.ts'
import { TimeScale } from './TimeScale.tsx'

export interface PolicySegment {
  from: number
  to: number
  kind: 'collect' | 'score' | 'finish' | 'stop'
  text: string
}

export interface PolicyRow {
  id: string
  name: string
  bands: PolicySegment[]
}

const rowHeight = 46
const barHeight = 22

const fills = { collect: 'var(--shoal)', score: 'var(--deep)', finish: 'var(--land)', stop: 'var(--sheet)' }

/** What is best from each place over time left: the match runs to the right, down to the buzzer. */
export function PolicyStrip(props: { rows: PolicyRow[]; teleop: number; endgame: number; width: number }) {
  const { rows, teleop, endgame, width } = props
  const id = useId()
  const scale = linearScale([teleop, 0], [4, width - 10])
  const height = rows.length * rowHeight + 30
  return (
    <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={words().charts.policy}>
      <defs>
        <Hatch id={`${id}stop`} gap={7} />
      </defs>
      {rows.map((row, index) => (
        <g key={row.id}>
          <text x={4} y={index * rowHeight + 14} fontSize="13">
            {row.name}
          </text>
          {row.bands.map((band) => (
            <PolicyBand key={band.from} band={band} scale={scale} y={index * rowHeight + 19} hatch={`${id}stop`} />
          ))}
        </g>
      ))}
      <line
        x1={pixel(scale(endgame))}
        x2={pixel(scale(endgame))}
        y1={0}
        y2={rows.length * rowHeight}
        style={{ stroke: 'var(--note)' }}
        strokeDasharray="5 3"
        strokeWidth="1.5"
      />
      <TimeScale scale={scale} domain={[teleop, 0]} y={height - 26} width={width} unit={words().charts.timeLeft} />
    </svg>
  )
}

function PolicyBand(props: { band: PolicySegment; scale: (value: number) => number; y: number; hatch: string }) {
  const { band, scale, y } = props
  const x = scale(band.from)
  const width = Math.max(1, scale(band.to) - x)
  const shape = { x: pixel(x), y, width: pixel(width), height: barHeight }
  const text = [band.text, band.text.replace(/^(collect \d+ from|score at|go to) /, '')].find(
    (said) => said.length * 6.4 < width - 8,
  )
  return (
    <g>
      <rect {...shape} style={{ fill: fills[band.kind], stroke: 'var(--ink)' }} strokeWidth="0.75" />
      {band.kind === 'stop' && <rect {...shape} fill={`url(#${props.hatch})`} />}
      {text && (
        <text
          x={pixel(x + 5)}
          y={y + 15}
          fontSize="12.5"
          style={{ fill: band.kind === 'score' ? 'var(--on-deep)' : 'var(--ink)' }}
        >
          {text}
        </text>
      )}
    </g>
  )
}
