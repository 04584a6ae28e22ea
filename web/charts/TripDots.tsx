import { words } from '../words/catalogue.ts'
import { plain } from '../words/format.ts'
import { type Distribution, stackDots } from './quantileDots.ts'
import { linearScale, pixel, ticks } from './scale.ts'

export interface TripDot {
  seconds: number
  /** False: it was cut off there, and lasted longer. */
  ended: boolean
}

/** Room above the dots. */
const top = 6

/**
 * Each trip that was seen as a dot over what the design predicts: the curve is as high as dots would stand there if the field were as
 * the design. Filled dots were seen to their end, empty ones were cut off and lasted longer.
 */
export function TripDots(props: { width: number; distribution: Distribution; trips: readonly TripDot[] }) {
  const { width, distribution, trips } = props
  const texts = words().fieldCheck.dots
  const share = (below: number) => distribution.reduce((sum, [x, p]) => (x < below ? sum + p : sum), 0)
  const tail = distribution.find(([x]) => share(x) > 0.995)?.[0] ?? distribution.at(-1)?.[0] ?? 1
  const most = Math.max(tail, ...trips.map(({ seconds }) => seconds)) + 1
  const column = [0.5, 1, 2, 3, 5, 10].find((size) => size * Math.min(40, width / 14) >= most) ?? 20
  const scale = linearScale([0, Math.ceil(most / column) * column], [8, width - 8])
  const ended = trips.filter((trip) => trip.ended)
  const others = trips.filter((trip) => !trip.ended)
  // One stack of both, those that ended below.
  const dots = stackDots(
    [...ended, ...others].map(({ seconds }) => seconds),
    column,
  ).map((dot, i) => ({
    ...dot,
    ended: i < ended.length,
  }))
  const columns = Array.from({ length: Math.ceil(most / column) }, (_, k) => ({
    at: (k + 0.5) * column,
    expected: trips.length * (share((k + 1) * column) - share(k * column)),
  }))
  const highest = Math.max(1, ...dots.map(({ level }) => level + 1), ...columns.map(({ expected }) => expected))
  const step = Math.min(scale(column) - scale(0), 15, 260 / highest)
  const base = pixel(top + highest * step + 6)
  const y = (count: number) => pixel(base - count * step)
  const curve = columns.map(({ at, expected }) => `${pixel(scale(at))} ${y(expected)}`).join(' L')
  const radius = pixel(Math.max(1, step / 2 - 0.75))
  return (
    <svg
      width={width}
      height={base + 38}
      viewBox={`0 0 ${width} ${base + 38}`}
      role="img"
      aria-label={texts.label(ended.length, others.length)}
    >
      <path
        d={`M${pixel(scale(0))} ${base} L${curve} L${pixel(scale(most))} ${base} Z`}
        style={{ fill: 'var(--deep)', opacity: 0.16 }}
      />
      <path d={`M${curve}`} fill="none" style={{ stroke: 'var(--deep)' }} strokeWidth="2" strokeDasharray="6 3" />
      {dots.map((dot) => (
        <circle
          key={`${dot.column}/${dot.level}`}
          cx={pixel(scale(dot.column))}
          cy={pixel(base - (dot.level + 0.5) * step)}
          r={radius}
          style={{ fill: dot.ended ? 'var(--ink)' : 'var(--sheet)', stroke: 'var(--ink)' }}
          strokeWidth="1.25"
        />
      ))}
      <line x1={0} x2={width} y1={base} y2={base} style={{ stroke: 'var(--rule-strong)' }} />
      {ticks([0, most], Math.max(3, Math.floor(width / 90))).map((tick) => (
        <text key={tick} x={pixel(scale(tick))} y={base + 16} fontSize="12" textAnchor="middle" className="soft">
          {plain(tick, 1)}
        </text>
      ))}
      <text x={width - 8} y={base + 33} fontSize="12" textAnchor="end" className="soft">
        {texts.axis}
      </text>
    </svg>
  )
}
