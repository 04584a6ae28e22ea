import { words } from '../words/catalogue.ts'
import { plain, points } from '../words/format.ts'
import { seriesColour, seriesLetter } from './DotPlot.tsx'
import { linearScale, pixel, ticks } from './scale.ts'

export interface CurveLine {
  id: string
  name: string
  /** Expected points at each value of the input. */
  at: [number, number][]
}

const height = 260
const bottom = 36
const left = 40

/** Expected points of each option against one unknown; where the lines cross, the best option changes. */
export function BreakEvenLines(props: {
  lines: CurveLine[]
  crossings: number[]
  likely: number
  width: number
  axis: string
  tick(value: number): string
}) {
  const { lines, crossings, likely, width } = props
  const xs = lines.flatMap((line) => line.at.map(([x]) => x))
  const ys = lines.flatMap((line) => line.at.map(([, y]) => y))
  const [low, high] = [Math.min(...ys), Math.max(...ys)]
  const margin = Math.max(0.5, (high - low) * 0.12)
  const x = linearScale([Math.min(...xs), Math.max(...xs)], [left, width - 74])
  const y = linearScale([low - margin, high + margin], [height - bottom, 10])
  const names = endLabels(lines, y)
  const text = words().charts
  return (
    <svg
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={text.lines(
        props.axis,
        crossings.length > 0 ? text.changesAt(crossings.map(props.tick).join(text.and)) : text.changesNowhere,
      )}
    >
      {ticks([low - margin, high + margin], 4).map((tick) => (
        <g key={tick}>
          <line x1={left} x2={width - 74} y1={pixel(y(tick))} y2={pixel(y(tick))} style={{ stroke: 'var(--rule)' }} />
          <text x={left - 6} y={pixel(y(tick) + 4)} fontSize="12" textAnchor="end" className="soft">
            {plain(tick, 3)}
          </text>
        </g>
      ))}
      {ticks([Math.min(...xs), Math.max(...xs)], Math.max(2, Math.floor(width / 130))).map((tick) => (
        <text key={tick} x={pixel(x(tick))} y={height - bottom + 17} fontSize="12" textAnchor="middle" className="soft">
          {props.tick(tick)}
        </text>
      ))}
      <line
        x1={left}
        x2={width - 74}
        y1={height - bottom}
        y2={height - bottom}
        style={{ stroke: 'var(--rule-strong)' }}
      />
      <line
        x1={pixel(x(likely))}
        x2={pixel(x(likely))}
        y1={height - bottom}
        y2={height - bottom - 9}
        style={{ stroke: 'var(--ink)' }}
        strokeWidth="2"
      />
      <text x={pixel(x(likely))} y={height - 3} fontSize="12" textAnchor="middle">
        {text.likely}
      </text>
      {lines.map((line, index) => (
        <path
          key={line.id}
          d={`M${line.at.map(([value, mean]) => `${pixel(x(value))} ${pixel(y(mean))}`).join('L')}`}
          fill="none"
          style={{ stroke: seriesColour(index) }}
          strokeWidth="2.5"
          strokeDasharray={['', '7 4', '2 3', '9 3 2 3'][index % 4]}
        />
      ))}
      {names.map(({ id, index, at, mean }) => (
        <text
          key={id}
          x={width - 68}
          y={pixel(at + 4)}
          fontSize="13"
          fontWeight="600"
          style={{ fill: seriesColour(index) }}
        >
          {seriesLetter(index)} {points(mean)}
        </text>
      ))}
      {crossings.map((crossing) => (
        <line
          key={crossing}
          x1={pixel(x(crossing))}
          x2={pixel(x(crossing))}
          y1={10}
          y2={height - bottom}
          style={{ stroke: 'var(--note)' }}
          strokeWidth="1.5"
          strokeDasharray="5 3"
        />
      ))}
    </svg>
  )
}

/** Labels at the lines' right ends, moved apart where they would overlap. */
function endLabels(lines: readonly CurveLine[], y: (value: number) => number) {
  const labels = lines
    .map((line, index) => ({ id: line.id, index, mean: line.at.at(-1)?.[1] ?? 0, at: y(line.at.at(-1)?.[1] ?? 0) }))
    .sort((a, b) => a.at - b.at)
  for (let index = 1; index < labels.length; index++)
    labels[index]!.at = Math.max(labels[index]!.at, labels[index - 1]!.at + 15)
  return labels
}
