import { words } from '../words/catalogue.ts'
import { plain, points } from '../words/format.ts'
import { seriesColour, seriesLetter } from './DotPlot.tsx'
import { linearScale, pixel, ticks } from './scale.ts'
import { TimeScale } from './TimeScale.tsx'

export interface WorthLine {
  id: string
  name: string
  /** Which option it belongs to: its colour and letter. */
  index: number
  /** How much of a load: told by the dashes. */
  dash: number
  at: readonly (readonly [secondsLeft: number, points: number])[]
}

const left = 34
const height = 240
const bottom = 34

/** What one more piece in hand is worth against time left, which runs down to the right. */
export function WorthLines(props: { lines: WorthLine[]; width: number }) {
  const { lines, width } = props
  const text = words().charts
  const times = lines.flatMap(({ at }) => at.map(([time]) => time))
  const most = Math.max(0.5, ...lines.flatMap(({ at }) => at.map(([, value]) => value)))
  const least = Math.min(0, ...lines.flatMap(({ at }) => at.map(([, value]) => value)))
  const longest = Math.max(1, ...times)
  const x = linearScale([longest, 0], [left, width - 12])
  const y = linearScale([least, most * 1.06], [height - bottom, 8])
  const said = lines
    .map(({ name, at }) => text.worthLine(name, points(Math.max(0, ...at.map(([, value]) => value)))))
    .join('; ')
  return (
    <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={text.worth(said)}>
      {ticks([least, most * 1.06], 4).map((tick) => (
        <g key={tick}>
          <line x1={left} x2={width - 12} y1={pixel(y(tick))} y2={pixel(y(tick))} style={{ stroke: 'var(--rule)' }} />
          <text x={left - 6} y={pixel(y(tick) + 4)} fontSize="12" textAnchor="end" className="soft">
            {plain(tick, 3)}
          </text>
        </g>
      ))}
      {lines.map(({ id, index, dash, at }) => (
        <path
          key={id}
          d={`M${[...at]
            .reverse()
            .map(([time, value]) => `${pixel(x(time))} ${pixel(y(value))}`)
            .join('L')}`}
          fill="none"
          style={{ stroke: seriesColour(index) }}
          strokeWidth="2.25"
          strokeDasharray={['', '7 4', '2 3', '9 3 2 3'][(index + dash) % 4]}
          strokeLinejoin="round"
        />
      ))}
      {letters(lines, y).map(({ id, index, at }) => (
        <text
          key={id}
          x={left + 6}
          y={pixel(at)}
          fontSize="13"
          fontWeight="700"
          className="halo"
          style={{ fill: seriesColour(index) }}
        >
          {seriesLetter(index)}
        </text>
      ))}
      <TimeScale scale={x} domain={[longest, 0]} y={height - bottom + 8} width={width} unit={text.timeLeft} />
    </svg>
  )
}

/** Letters above the lines' left ends, moved apart where they would overlap. */
function letters(lines: readonly WorthLine[], y: (value: number) => number) {
  const placed = lines
    .map(({ id, index, at }) => ({ id, index, at: y(at.at(-1)?.[1] ?? 0) - 5 }))
    .sort((a, b) => b.at - a.at)
  for (let index = 1; index < placed.length; index++)
    placed[index]!.at = Math.min(placed[index]!.at, placed[index - 1]!.at - 15)
  return placed
}
