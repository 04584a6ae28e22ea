import { linearScale, pixel, ticks } from './scale.ts'
import './trend.css'

export interface TrendPoint {
  label: string
  /** What the match itself says. */
  value: number
  /** What is believed after it, and where it lies. */
  mean: number
  low: number
  high: number
}

const [height, left, bottom, top] = [180, 34, 20, 8]

/** Values one after the other as dots, with the running belief as a line in its band. Each point says itself in words. */
export function TrendLine(props: {
  points: readonly TrendPoint[]
  width: number
  label: string
  write(value: number): string
}) {
  const { points, width, label, write } = props
  const most = Math.max(1, ...points.map(({ value, high }) => Math.max(value, high)))
  const y = linearScale([0, most], [height - bottom, top])
  const x = linearScale([0, Math.max(1, points.length - 1)], [left + 8, width - 10])
  const path = (of: (point: TrendPoint) => number) => points.map((point, k) => `${pixel(x(k))},${pixel(y(of(point)))}`)
  const band = [...path(({ high }) => high), ...path(({ low }) => low).reverse()].join(' ')
  return (
    <svg
      className="trend"
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      role="img"
      aria-label={label}
    >
      {ticks([0, most], 4).map((value) => (
        <g key={value}>
          <line className="trend-rule" x1={left} x2={width} y1={y(value)} y2={y(value)} />
          <text x={left - 4} y={y(value) + 4} textAnchor="end">
            {write(value)}
          </text>
        </g>
      ))}
      <polygon className="trend-band" points={band} />
      <polyline className="trend-line" points={path(({ mean }) => mean).join(' ')} />
      {points.map((point, k) => (
        <circle key={point.label} className="trend-dot" cx={x(k)} cy={y(point.value)} r="4">
          <title>{point.label}</title>
        </circle>
      ))}
    </svg>
  )
}
