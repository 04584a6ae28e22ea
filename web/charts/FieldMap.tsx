import { type ReactNode, useId } from 'react'
import type { Game, Point } from '../../src/model/documents/types.ts'
import { useUnits } from '../units/system.ts'
import { sayDistance } from '../units/write.ts'
import { words } from '../words/catalogue.ts'
import { Hatch } from './Hatch.tsx'
import { pixel } from './scale.ts'

export interface FieldMarks {
  /** A robot's centre path, drawn with its start and end. */
  route?: Point[]
  /** Length and width of the robot at the route's start (m). */
  footprint?: { length: number; width: number }
}

const letters = { source: 'S', goal: 'G', finish: 'F', start: '' }

/** Where things are drawn: from metres on the field to pixels of the picture. */
export interface FieldFrame {
  x(along: number): number
  y(across: number): number
  /** Pixels of a metre. */
  metre: number
}

/** Where a field's drawing of this width has its metres. */
export function frameOf(
  field: Pick<Game['field'], 'length' | 'width'>,
  width: number,
): FieldFrame & { height: number } {
  const metre = (width - 2) / field.length
  return {
    x: (along) => pixel(1 + along * metre),
    y: (across) => pixel(1 + (field.width - across) * metre),
    metre,
    height: Math.ceil(field.width * metre) + 34,
  }
}

/**
 * The field to scale, own wall to the left, y upwards. Places carry a letter, so that colour is not the only sign.
 * With `children` they draw starts and places, and what can be done with them; `under` lies below the obstacles, `over`
 * above everything, and what it offers is called by `name`.
 */
export function FieldMap(props: {
  game: Game
  width: number
  marks?: FieldMarks
  under?: (frame: FieldFrame) => ReactNode
  over?: (frame: FieldFrame) => ReactNode
  name?: string
  children?: (frame: FieldFrame) => ReactNode
}) {
  const { game, marks } = props
  const id = useId()
  const system = useUnits()
  const texts = words().field
  const { length, width: breadth } = game.field
  const frame = frameOf(game.field, props.width)
  const { x, y, metre: scale, height } = frame
  const line = (path: readonly Point[]) => path.map(([px, py]) => `${x(px)} ${y(py)}`).join('L')
  const size = `${sayDistance(length, system)} × ${sayDistance(breadth, system)}`
  return (
    <svg
      width={props.width}
      height={height}
      viewBox={`0 0 ${props.width} ${height}`}
      role={props.children || props.over ? 'group' : 'img'}
      aria-label={props.name ?? (props.children ? texts.desk(game.name) : texts.drawing(game.name, size))}
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
      {props.under?.(frame)}
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
      {props.children ? props.children(frame) : <Standing game={game} frame={frame} />}
      {props.over?.(frame)}
      <FieldScale x={1} y={height - 26} metre={scale} />
    </svg>
  )
}

function Standing(props: { game: Game; frame: FieldFrame }) {
  const { game } = props
  const { x, y } = props.frame
  return (
    <>
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
    </>
  )
}

/** The first metres, or feet in twos, in black and white. */
function FieldScale(props: { x: number; y: number; metre: number }) {
  const metric = useUnits() === 'metric'
  const step = props.metre * (metric ? 1 : 0.6096)
  return (
    <g aria-hidden="true">
      {[0, 1, 2, 3].map((part) => (
        <rect
          key={part}
          x={pixel(props.x + part * step)}
          y={props.y}
          width={pixel(step)}
          height={5}
          style={{ fill: part % 2 === 0 ? 'var(--ink)' : 'var(--sheet)', stroke: 'var(--ink)' }}
          strokeWidth="0.75"
        />
      ))}
      <text x={pixel(props.x + 4 * step + 6)} y={props.y + 8} fontSize="12" className="soft">
        {words().field.scale[metric ? 'metric' : 'inchPound']}
      </text>
    </g>
  )
}
