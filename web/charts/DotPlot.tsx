import { words as texts } from '../words/catalogue.ts'
import { plain, points } from '../words/format.ts'
import { type Distribution, dotsBelow, quantileDots, stackDots } from './quantileDots.ts'
import { linearScale, pixel, ticks } from './scale.ts'

export interface DotRow {
  id: string
  name: string
  distribution: Distribution
  mean: number
  /** In place of the option's letter and colour. */
  mark?: { letter: string; colour: string }
}

const count = 20
const labelHeight = 22

/** The colours of options, in their order; a row's letter says the same without colour. */
export const seriesColour = (index: number): string => `var(--series-${(index % 4) + 1})`
export const seriesLetter = (index: number): string => String.fromCharCode(65 + (index % 26))

const markOf = (index: number) => ({ letter: seriesLetter(index), colour: seriesColour(index) })

/** Width of a column of dots (points), so that twenty of them still stand on each other. */
export function dotColumn(width: number, values: readonly number[]): number {
  const span = Math.max(...values) - Math.min(...values)
  // More columns than this, and twenty dots no longer stand on each other.
  const wanted = span / Math.min(15, Math.max(8, Math.floor(width / 22)))
  return [0.5, 1, 2, 3, 4, 5, 10, 20, 50, 100].find((size) => size >= wanted) ?? 200
}

/**
 * Quantile dot plots one under the other on one axis: each dot is one of 20 equally likely matches.
 * Dots left of `threshold` are filled, so that 'in 3 of 20 matches less than 60' can be counted.
 */
export function DotPlot(props: { rows: DotRow[]; width: number; threshold: number | null; firstIndex?: number }) {
  const { width, threshold } = props
  const rows = props.rows.map((row) => ({ ...row, dots: quantileDots(row.distribution, count) }))
  const all = rows.flatMap((row) => row.dots)
  if (all.length === 0) return null
  const size = dotColumn(width, all)
  const stacks = rows.map((row) => stackDots(row.dots, size, threshold ?? 0))
  const low = Math.min(...all, threshold ?? Number.POSITIVE_INFINITY) - size
  const high = Math.max(...all, threshold ?? Number.NEGATIVE_INFINITY) + size
  const scale = linearScale([low, high], [6, width - 6])
  const radius = Math.min(8, (scale(size) - scale(0)) / 2 - 0.5)
  const step = radius * 2 + 1
  const heights = stacks.map((dots) => labelHeight + (1 + Math.max(...dots.map((dot) => dot.level))) * step + 14)
  const tops = heights.map((_, index) => heights.slice(0, index).reduce((sum, height) => sum + height, 0))
  const bottom = heights.reduce((sum, height) => sum + height, 0)
  const words = rows.map((row) => texts().charts.dotRow(row.name, points(row.mean))).join('; ')
  return (
    <svg
      width={width}
      height={pixel(bottom + 24)}
      viewBox={`0 0 ${width} ${pixel(bottom + 24)}`}
      role="img"
      aria-label={texts().charts.dots(words)}
    >
      {threshold !== null && (
        <line
          x1={pixel(scale(threshold))}
          x2={pixel(scale(threshold))}
          y1={0}
          y2={pixel(bottom)}
          style={{ stroke: 'var(--note)' }}
          strokeWidth="1.5"
          strokeDasharray="5 3"
        />
      )}
      {rows.map((row, index) => {
        const base = tops[index]! + heights[index]! - 6
        const { letter, colour } = row.mark ?? markOf(index + (props.firstIndex ?? 0))
        return (
          <g key={row.id}>
            <text x={6} y={pixel(tops[index]! + 15)} fontSize="14" fontWeight="600" className="halo">
              {letter} {row.name}
            </text>
            <line x1={0} x2={width} y1={pixel(base)} y2={pixel(base)} style={{ stroke: 'var(--rule-strong)' }} />
            {stacks[index]!.map((dot) => (
              <circle
                key={`${dot.column}/${dot.level}`}
                cx={pixel(scale(dot.column))}
                cy={pixel(base - radius - 1 - dot.level * step)}
                r={pixel(radius)}
                style={{
                  fill: threshold !== null && dot.value < threshold ? colour : 'var(--sheet)',
                  stroke: colour,
                }}
                strokeWidth="1.75"
              />
            ))}
            <path d={`M${pixel(scale(row.mean))} ${pixel(base + 1)}l-5 6h10z`} style={{ fill: colour }} />
          </g>
        )
      })}
      {ticks([low, high], Math.max(3, Math.floor(width / 80))).map((tick) => (
        <text
          key={tick}
          x={pixel(scale(tick))}
          y={pixel(bottom + 16)}
          fontSize="12"
          textAnchor="middle"
          className="soft"
        >
          {plain(tick, 3)}
        </text>
      ))}
    </svg>
  )
}

/** 'In 3 of 20 matches less than 60 points.' */
export const belowWords = (distribution: Distribution, threshold: number): string =>
  texts().charts.below(dotsBelow(quantileDots(distribution, count), threshold), count, plain(threshold))
