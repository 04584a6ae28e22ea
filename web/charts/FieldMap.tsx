import { useId } from 'react'
import type { Game, Point } from '../../src/model/documents/types.ts'
import { Hatch } from './Hatch.tsx'
import { pixel } from './scale.ts'

export interface FieldMarks {
  /** A robot's centre path, drawn with its start and end. */
  route?: Point[]
  /** Length and width of the robot at the route's start (m). */
  footprint?: { length: number; width: number }
}

const letters = { source: 'S', goal: 'G', finish: 'F', start: '' }

/** The other alliance's view of a point. */
export const reflected = (game: Game, [x, y]: Point): Point =>
  game.field.symmetry === 'rotate' ? [game.field.length - x, game.field.width - y] : [game.field.length - x, y]

/** The field to scale, own wall to the left, y upwards. Places carry a letter, so that colour is not the only sign. */
export function FieldMap(props: { game: Game; width: number; marks?: FieldMarks }) {
  const { game, marks } = props
  const id = useId()
  const { length, width: breadth } = game.field
  const scale = (props.width - 2) / length
  const height = Math.ceil(breadth * scale) + 34
  const x = (value: number) => pixel(1 + value * scale)
  const y = (value: number) => pixel(1 + (breadth - value) * scale)
  const line = (path: readonly Point[]) => path.map(([px, py]) => `${x(px)} ${y(py)}`).join('L')
  return (
    <svg
      width={props.width}
      height={height}
      viewBox={`0 0 ${props.width} ${height}`}
      role="img"
      aria-label={`The field of ${game.name}, ${length} by ${breadth} metres; the table lists its places`}
    >
      <defs>
        <Hatch id={`${id}land`} gap={6} />
      </defs>
      <rect
        x={1}
        y={1}
        width={pixel(length * scale)}
        height={pixel(breadth * scale)}
        style={{ fill: 'var(--shoal)', stroke: 'var(--ink)' }}
        strokeWidth="1.5"
      />
      <line
        x1={x(length / 2)}
        x2={x(length / 2)}
        y1={y(0)}
        y2={y(breadth)}
        style={{ stroke: 'var(--rule-strong)' }}
        strokeDasharray="6 4"
      />
      {game.field.obstacles.map((obstacle) => (
        <g key={obstacle.id}>
          <path d={`M${line(obstacle.outline)}Z`} style={{ fill: 'var(--land)', stroke: 'var(--ink)' }} />
          <path d={`M${line(obstacle.outline)}Z`} fill={`url(#${id}land)`} />
        </g>
      ))}
      {marks?.route && marks.route.length > 1 && (
        <path
          d={`M${line(marks.route)}`}
          fill="none"
          style={{ stroke: 'var(--note)' }}
          strokeWidth="2.5"
          strokeLinejoin="round"
        />
      )}
      {game.starts.map((start) => (
        <rect
          key={start.id}
          x={x(start.at[0]) - 4}
          y={y(start.at[1]) - 4}
          width={8}
          height={8}
          style={{ fill: 'var(--sheet)', stroke: 'var(--ink)' }}
        />
      ))}
      {(['source', 'goal', 'finish'] as const).flatMap((kind) =>
        game[kind === 'finish' ? 'finishes' : kind === 'goal' ? 'goals' : 'sources'].flatMap((place, index) =>
          place.spots.map((spot) => (
            <g key={spot.id}>
              <circle
                cx={x(spot.at[0])}
                cy={y(spot.at[1])}
                r={10}
                style={{ fill: 'var(--sheet)', stroke: 'var(--ink)' }}
                strokeWidth={kind === 'goal' ? 2.5 : 1}
              />
              <text x={x(spot.at[0])} y={y(spot.at[1]) + 4} fontSize="11" fontWeight="700" textAnchor="middle">
                {letters[kind]}
                {index + 1}
              </text>
            </g>
          )),
        ),
      )}
      <FieldScale x={1} y={height - 26} metre={scale} />
    </svg>
  )
}

function FieldScale(props: { x: number; y: number; metre: number }) {
  return (
    <g>
      {[0, 1, 2, 3].map((step) => (
        <rect
          key={step}
          x={pixel(props.x + step * props.metre)}
          y={props.y}
          width={pixel(props.metre)}
          height={5}
          style={{ fill: step % 2 === 0 ? 'var(--ink)' : 'var(--sheet)', stroke: 'var(--ink)' }}
          strokeWidth="0.75"
        />
      ))}
      <text x={pixel(props.x + 4 * props.metre + 6)} y={props.y + 8} fontSize="12" className="soft">
        4 m
      </text>
    </g>
  )
}
