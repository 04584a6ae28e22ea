import type { Known } from '../../src/model/scouting/field/types.ts'
import { words } from '../words/catalogue.ts'
import { plain, seconds } from '../words/format.ts'
import { linearScale, pixel, ticks } from './scale.ts'

export interface PairedRow {
  name: string
  /** Seconds. */
  model: number
  field: Known
}

const [nameHeight, bar, gap] = [18, 11, 12]
const rowHeight = nameHeight + 2 * bar + 3 + gap

/** Two bars a row: what the model says, outlined, and what the field says, filled, with the line of its 95 %. */
export function PairedBars(props: { width: number; rows: readonly PairedRow[] }) {
  const { width, rows } = props
  const texts = words().fieldCheck.bars
  const most = Math.max(...rows.flatMap(({ model, field }) => [model, field.mean, field.interval95?.[1] ?? 0]))
  const scale = linearScale([0, most * 1.02], [1, width - 12])
  const legend = 24
  const bottom = legend + rows.length * rowHeight
  const told = rows.map(({ name, model, field }) => texts.row(name, seconds(model), seconds(field.mean))).join('; ')
  return (
    <svg width={width} height={bottom + 24} viewBox={`0 0 ${width} ${bottom + 24}`} role="img" aria-label={told}>
      <g fontSize="12">
        <rect x={1} y={4} width={18} height={bar} className="paired-model" />
        <text x={24} y={14}>
          {texts.model}
        </text>
        <rect x={97} y={4} width={18} height={bar} className="paired-field" />
        <text x={120} y={14}>
          {texts.field}
        </text>
      </g>
      {rows.map(({ name, model, field }, index) => {
        const y = legend + index * rowHeight
        const [first, second] = [y + nameHeight, y + nameHeight + bar + 3]
        const middle = second + bar / 2
        return (
          <g key={name}>
            <text x={1} y={y + 13} fontSize="13" fontWeight="600">
              {name}
            </text>
            <rect x={1} y={first} width={pixel(scale(model) - 1)} height={bar} className="paired-model" />
            <rect x={1} y={second} width={pixel(scale(field.mean) - 1)} height={bar} className="paired-field" />
            {field.interval95 && (
              <Range
                from={pixel(scale(Math.max(0, field.interval95[0])))}
                to={pixel(scale(field.interval95[1]))}
                y={middle}
              />
            )}
          </g>
        )
      })}
      {ticks([0, most], Math.max(3, Math.floor(width / 90))).map((tick) => (
        <text
          key={tick}
          x={pixel(scale(tick))}
          y={bottom + 14}
          fontSize="12"
          textAnchor={tick === 0 ? 'start' : 'middle'}
          className="soft"
        >
          {plain(tick, 1)}
        </text>
      ))}
    </svg>
  )
}

/** Light below, dark above: it is seen on the bar and beside it. */
function Range({ from, to, y }: { from: number; to: number; y: number }) {
  const d = `M${from} ${y - 4}v8m0 -4H${to}m0 -4v8`
  return (
    <>
      <path d={d} className="paired-range-under" />
      <path d={d} className="paired-range" />
    </>
  )
}
