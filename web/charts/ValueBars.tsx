import { linearScale, pixel } from './scale.ts'

export interface ValueBar {
  id: string
  name: string
  value: number
  error?: number
  text: string
}

const rowHeight = 44

/** Plain bars from zero, each with its number and, where it has one, its standard error as a whisker. */
export function ValueBars(props: { bars: ValueBar[]; width: number; label: string; most?: number }) {
  const { bars, width } = props
  const most = props.most ?? Math.max(0.001, ...bars.map((bar) => bar.value + (bar.error ?? 0)))
  const x = linearScale([0, most], [4, width - 76])
  const height = bars.length * rowHeight
  return (
    <svg
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={`${props.label}: ${bars.map((bar) => `${bar.name} ${bar.text}`).join('; ')}`}
    >
      {bars.map((bar, index) => {
        const y = index * rowHeight
        return (
          <g key={bar.id}>
            <text x={4} y={y + 15} fontSize="13.5">
              {bar.name}
            </text>
            <rect
              x={4}
              y={y + 21}
              width={pixel(Math.max(1, x(bar.value) - 4))}
              height={14}
              style={{ fill: 'var(--deep)' }}
            />
            {bar.error !== undefined && bar.error > 0 && (
              <line
                x1={pixel(x(Math.max(0, bar.value - bar.error)))}
                x2={pixel(x(bar.value + bar.error))}
                y1={y + 28}
                y2={y + 28}
                style={{ stroke: 'var(--note)' }}
                strokeWidth="3"
              />
            )}
            <text x={pixel(x(bar.value + (bar.error ?? 0)) + 7)} y={y + 33} fontSize="13.5" fontWeight="600">
              {bar.text}
            </text>
          </g>
        )
      })}
    </svg>
  )
}
