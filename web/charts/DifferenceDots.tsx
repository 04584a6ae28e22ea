import { words } from '../words/catalogue.ts'
import { signedPoints } from '../words/format.ts'
import { dotColumn, seriesColour } from './DotPlot.tsx'
import { type Distribution, quantileDots, stackDots } from './quantileDots.ts'
import { linearScale, pixel, ticks } from './scale.ts'

/** Dots of differences below 0: pairs of matches in which the option scores less than the other. */
export const dotsBehind = (dots: readonly number[]): number => dots.filter((dot) => dot < 0).length

/** Twenty equally likely differences between two matches: filled left of the line, where the option scores less. */
export function DifferenceDots(props: {
  distribution: Distribution
  mean: number
  width: number
  index: number
  axis: string
  /** What is said of it to those who do not see it, where it is no pair of options. */
  told?: string
}) {
  const { width, mean } = props
  const dots = quantileDots(props.distribution)
  if (dots.length === 0) return null
  const size = dotColumn(width, [...dots, 0])
  const stacks = stackDots(dots, size, 0)
  const scale = linearScale([Math.min(0, ...dots) - size, Math.max(0, ...dots) + size], [6, width - 6])
  const radius = Math.min(8, (scale(size) - scale(0)) / 2 - 0.5)
  const step = radius * 2 + 1
  const base = (1 + Math.max(...stacks.map(({ level }) => level))) * step + 18
  const colour = seriesColour(props.index)
  const text = words().charts
  const ends = [scale.invert(6), scale.invert(width - 6)] as const
  return (
    <svg
      width={width}
      height={pixel(base + 46)}
      viewBox={`0 0 ${width} ${pixel(base + 46)}`}
      role="img"
      aria-label={props.told ?? text.difference(dotsBehind(dots), signedPoints(mean))}
    >
      <line x1={0} x2={width} y1={pixel(base)} y2={pixel(base)} style={{ stroke: 'var(--rule-strong)' }} />
      <line
        x1={pixel(scale(0))}
        x2={pixel(scale(0))}
        y1={0}
        y2={pixel(base + 8)}
        style={{ stroke: 'var(--note)' }}
        strokeWidth="1.5"
        strokeDasharray="5 3"
      />
      {stacks.map((dot) => (
        <circle
          key={`${dot.column}/${dot.level}`}
          cx={pixel(scale(dot.column))}
          cy={pixel(base - radius - 1 - dot.level * step)}
          r={pixel(radius)}
          style={{ fill: dot.value < 0 ? colour : 'var(--sheet)', stroke: colour }}
          strokeWidth="1.75"
        />
      ))}
      <path d={`M${pixel(scale(mean))} ${pixel(base + 1)}l-5 6h10z`} style={{ fill: colour }} />
      {ticks(ends, Math.max(3, Math.floor(width / 80))).map((tick) => (
        <text
          key={tick}
          x={pixel(scale(tick))}
          y={pixel(base + 23)}
          fontSize="12"
          textAnchor={atEdge(scale(tick), width)}
          className="soft"
        >
          {signedPoints(tick).replace(/[.,]0$/, '')}
        </text>
      ))}
      <text x={width - 2} y={pixel(base + 41)} fontSize="12" textAnchor="end" className="soft">
        {props.axis} →
      </text>
    </svg>
  )
}

/** A label at the picture's edge stays inside of it. */
const atEdge = (x: number, width: number): 'start' | 'middle' | 'end' =>
  x > width - 18 ? 'end' : x < 18 ? 'start' : 'middle'
