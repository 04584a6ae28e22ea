import type { Learning } from '../../src/model/scouting/field/types.ts'
import { words } from '../words/catalogue.ts'
import { plain } from '../words/format.ts'
import { seriesColour, seriesLetter } from './DotPlot.tsx'
import { linearScale, pixel, ticks } from './scale.ts'

export interface PracticeRow {
  name: string
  /** Number of the run, and field time to model time in it. */
  runs: readonly { number: number; ratio: number }[]
  learning: Learning | null
}

const height = 220

/** How long trips take beside the design's from run to run: a letter for each driver, and the curve of practice where there is one. */
export function PracticeCurve(props: { width: number; rows: readonly PracticeRow[] }) {
  const { width, rows } = props
  const texts = words().fieldCheck.practice
  const all = rows.flatMap(({ runs }) => runs)
  const most = Math.max(2, ...all.map(({ number }) => number))
  const ratios = [1, ...all.map(({ ratio }) => ratio)]
  const [low, high] = [Math.min(...ratios) * 0.95, Math.max(...ratios) * 1.05]
  const x = linearScale([1, most], [46, width - 16])
  const y = linearScale([low, high], [height - 34, 10])
  const label = rows.map(({ name, runs }) => texts.row(name, runs.length)).join('; ')
  return (
    <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={label}>
      {ticks([low, high], 5).map((tick) => (
        <g key={tick}>
          <line x1={40} x2={width} y1={pixel(y(tick))} y2={pixel(y(tick))} style={{ stroke: 'var(--rule)' }} />
          <text x={36} y={pixel(y(tick) + 4)} fontSize="12" textAnchor="end" className="soft">
            {plain(tick, 2)}
          </text>
        </g>
      ))}
      <line
        x1={40}
        x2={width}
        y1={pixel(y(1))}
        y2={pixel(y(1))}
        style={{ stroke: 'var(--deep)' }}
        strokeWidth="2"
        strokeDasharray="6 3"
      />
      {rows.map(({ name, runs, learning }, index) => {
        const colour = seriesColour(index)
        const last = Math.max(...runs.map(({ number }) => number))
        const curve =
          learning &&
          Array.from({ length: 30 }, (_, k) => {
            const run = 1 + ((last - 1) * k) / 29
            return `${pixel(x(run))} ${pixel(y(learning.first * learning.doubling ** Math.log2(run)))}`
          }).join(' L')
        return (
          <g key={name}>
            {curve && <path d={`M${curve}`} fill="none" style={{ stroke: colour }} strokeWidth="1.75" />}
            {runs.map(({ number, ratio }) => (
              <text
                key={number}
                x={pixel(x(number))}
                y={pixel(y(ratio) + 5)}
                fontSize="14"
                fontWeight="700"
                textAnchor="middle"
                className="halo"
                style={{ fill: colour }}
              >
                {seriesLetter(index)}
              </text>
            ))}
          </g>
        )
      })}
      {ticks([1, most], Math.min(most, Math.max(3, Math.floor(width / 70))))
        .filter(Number.isInteger)
        .map((tick) => (
          <text key={tick} x={pixel(x(tick))} y={height - 18} fontSize="12" textAnchor="middle" className="soft">
            {tick}
          </text>
        ))}
      <text x={width - 8} y={height - 3} fontSize="12" textAnchor="end" className="soft">
        {texts.axis}
      </text>
    </svg>
  )
}
