import { words } from '../words/catalogue.ts'
import { signedPoints } from '../words/format.ts'
import { linearScale, pixel, ticks } from './scale.ts'

export interface SwingBar {
  id: string
  name: string
  /** What low and high are, in the input's own unit. */
  low: string
  high: string
  /** Lead of the best option over the runner-up at low and at high (points). */
  difference: [number, number]
}

const rowHeight = 52

/** One unknown at a time from low to high, widest on top: how far it moves the lead, and whether it turns it. */
export function SwingChart(props: { bars: SwingBar[]; base: number; width: number; ahead: string; behind: string }) {
  const { base, width } = props
  const spread = (bar: SwingBar) => Math.abs(bar.difference[1] - bar.difference[0])
  const bars = [...props.bars].sort((a, b) => spread(b) - spread(a))
  const values = [0, base, ...bars.flatMap((bar) => bar.difference)]
  const [low, high] = [Math.min(...values), Math.max(...values)]
  const x = linearScale([low, high], [62, width - 62])
  const height = bars.length * rowHeight + 44
  const text = words().charts
  return (
    <svg
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={text.swing(
        signedPoints(base),
        bars
          .map((bar) => text.swingBar(bar.name, signedPoints(bar.difference[0]), signedPoints(bar.difference[1])))
          .join('; '),
      )}
    >
      {low < 0 && (
        <rect x={0} y={0} width={pixel(x(0))} height={height - 40} style={{ fill: 'var(--land)' }} opacity="0.55" />
      )}
      <line
        x1={pixel(x(0))}
        x2={pixel(x(0))}
        y1={0}
        y2={height - 40}
        style={{ stroke: 'var(--ink)' }}
        strokeWidth="1.5"
      />
      <line
        x1={pixel(x(base))}
        x2={pixel(x(base))}
        y1={0}
        y2={height - 40}
        style={{ stroke: 'var(--note)' }}
        strokeDasharray="5 3"
      />
      {bars.map((bar, index) => (
        <Swing key={bar.id} bar={bar} x={x} y={index * rowHeight} />
      ))}
      {ticks([low, high], Math.max(2, Math.floor(width / 110))).map((tick) => (
        <text key={tick} x={pixel(x(tick))} y={height - 25} fontSize="12" textAnchor="middle" className="soft">
          {signedPoints(tick)}
        </text>
      ))}
      <text x={width - 2} y={height - 6} fontSize="12" textAnchor="end" className="soft">
        {props.ahead} →
      </text>
      {low < 0 && (
        <text x={2} y={height - 6} fontSize="12" className="soft">
          ← {props.behind}
        </text>
      )}
    </svg>
  )
}

function Swing(props: { bar: SwingBar; x: (value: number) => number; y: number }) {
  const { bar, x, y } = props
  const [atLow, atHigh] = bar.difference
  const left = Math.min(x(atLow), x(atHigh))
  const right = Math.max(x(atLow), x(atHigh))
  const [leftText, rightText] = atLow <= atHigh ? [bar.low, bar.high] : [bar.high, bar.low]
  return (
    <g>
      <text x={4} y={y + 16} fontSize="13.5" className="halo">
        {bar.name}
      </text>
      <rect
        x={pixel(left)}
        y={y + 23}
        width={pixel(Math.max(1.5, right - left))}
        height={18}
        style={{ fill: 'var(--deep)' }}
      />
      <text x={pixel(left - 5)} y={y + 37} fontSize="12.5" textAnchor="end" className="halo">
        {leftText}
      </text>
      <text x={pixel(right + 5)} y={y + 37} fontSize="12.5" className="halo">
        {rightText}
      </text>
    </g>
  )
}
