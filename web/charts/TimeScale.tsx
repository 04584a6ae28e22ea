import { plain } from '../words/format.ts'
import { pixel, type Scale, ticks } from './scale.ts'

/** A time axis in the manner of a sea chart's border: alternating black and white lengths, one per tick. */
export function TimeScale(props: { scale: Scale; domain: [number, number]; y: number; width: number; unit?: string }) {
  const [from, to] = props.domain
  const rising = to > from
  const sorted: [number, number] = rising ? [from, to] : [to, from]
  const marks = ticks(sorted, Math.max(2, Math.floor(props.width / 70)))
  const edges = [sorted[0], ...marks.filter((mark) => mark > sorted[0] && mark < sorted[1]), sorted[1]]
  return (
    <g aria-hidden="true">
      {edges.slice(0, -1).map((edge, index) => {
        const a = props.scale(edge)
        const b = props.scale(edges[index + 1]!)
        return (
          <rect
            key={edge}
            x={pixel(Math.min(a, b))}
            y={props.y}
            width={pixel(Math.abs(b - a))}
            height={5}
            style={{ fill: index % 2 === 0 ? 'var(--ink)' : 'var(--sheet)', stroke: 'var(--ink)' }}
            strokeWidth="0.75"
          />
        )
      })}
      {marks.map((mark) => (
        <text
          key={mark}
          x={pixel(props.scale(mark))}
          y={props.y + 19}
          textAnchor={atEdge(props.scale(mark), props.width)}
          fontSize="12"
          className="soft"
        >
          {plain(mark, 3)}
          {props.unit && mark === marks.at(-1) ? ` ${props.unit}` : ''}
        </text>
      ))}
    </g>
  )
}

/** A label at the picture's edge stays inside of it. */
const atEdge = (x: number, width: number): 'start' | 'middle' | 'end' =>
  x > width - 30 ? 'end' : x < 14 ? 'start' : 'middle'
