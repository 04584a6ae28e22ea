import type { Game, Point } from '../../../../src/model/documents/types.ts'
import { symmetricImage } from '../../../../src/model/field/index.ts'
import type { FieldFrame } from '../../../charts/FieldMap.tsx'
import { outlinePath } from './shapes.tsx'
import { spotsOf } from './things.ts'

/** How near the robot's centre gets: round each obstacle, and along the border. */
export function KeptAway(props: { game: Game; frame: FieldFrame; away: number; clip: string }) {
  const { frame, away } = props
  const { field } = props.game
  return (
    <g aria-hidden="true">
      <clipPath id={props.clip}>
        <rect
          x={frame.x(0)}
          y={frame.y(field.width)}
          width={field.length * frame.metre}
          height={field.width * frame.metre}
        />
      </clipPath>
      <g clipPath={`url(#${props.clip})`}>
        {field.obstacles.map(({ id, outline }) => (
          <path
            key={id}
            d={outlinePath(frame, outline)}
            style={{ fill: 'var(--shoal-deep)', stroke: 'var(--shoal-deep)' }}
            strokeWidth={2 * away * frame.metre}
            strokeLinejoin="round"
            opacity="0.55"
          />
        ))}
      </g>
      {field.length > 2 * away && field.width > 2 * away && (
        <rect
          x={frame.x(away)}
          y={frame.y(field.width - away)}
          width={(field.length - 2 * away) * frame.metre}
          height={(field.width - 2 * away) * frame.metre}
          fill="none"
          style={{ stroke: 'var(--hatch)' }}
          strokeDasharray="2 3"
        />
      )}
    </g>
  )
}

/** The places of the other alliance, where the symmetry puts them. */
export function OtherAlliance(props: { game: Game; frame: FieldFrame }) {
  const { game, frame } = props
  const image = (at: Point) => symmetricImage(game.field, at)
  return (
    <g aria-hidden="true" className="other-alliance">
      {game.starts.map(({ id, at }) => {
        const [x, y] = image(at)
        return (
          <rect
            key={id}
            x={frame.x(x) - 4}
            y={frame.y(y) - 4}
            width={8}
            height={8}
            fill="none"
            style={{ stroke: 'var(--ink-soft)' }}
            strokeDasharray="2 2"
          />
        )
      })}
      {spotsOf(game).map((thing) => {
        const [x, y] = image(thing.at)
        return (
          <g key={thing.key}>
            <circle
              cx={frame.x(x)}
              cy={frame.y(y)}
              r={8}
              fill="none"
              style={{ stroke: 'var(--ink-soft)' }}
              strokeDasharray="3 2"
            />
            <text x={frame.x(x)} y={frame.y(y) + 3.5} fontSize="9" textAnchor="middle" className="soft">
              {'letter' in thing ? thing.letter : ''}
            </text>
          </g>
        )
      })}
    </g>
  )
}

/** What a dragged thing is level with. */
export function Guides(props: { game: Game; frame: FieldFrame; guides: { x?: number; y?: number } }) {
  const { frame, guides } = props
  const { length, width } = props.game.field
  const look = { style: { stroke: 'var(--note)' }, strokeDasharray: '4 3', strokeWidth: 1 }
  return (
    <g aria-hidden="true" style={{ pointerEvents: 'none' }}>
      {guides.x !== undefined && (
        <line x1={frame.x(guides.x)} x2={frame.x(guides.x)} y1={frame.y(0)} y2={frame.y(width)} {...look} />
      )}
      {guides.y !== undefined && (
        <line x1={frame.x(0)} x2={frame.x(length)} y1={frame.y(guides.y)} y2={frame.y(guides.y)} {...look} />
      )}
    </g>
  )
}

/** The robot standing at a point, seen from above, to scale. */
export function RobotAt(props: { frame: FieldFrame; at: Point; footprint: { length: number; width: number } }) {
  const { frame, at, footprint } = props
  const [x, y] = [frame.x(at[0]), frame.y(at[1])]
  const [long, wide] = [footprint.length * frame.metre, footprint.width * frame.metre]
  return (
    <g aria-hidden="true" style={{ pointerEvents: 'none' }}>
      <rect
        x={x - long / 2}
        y={y - wide / 2}
        width={long}
        height={wide}
        fill="none"
        style={{ stroke: 'var(--note)' }}
        strokeDasharray="4 2"
      />
    </g>
  )
}
