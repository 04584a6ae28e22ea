import { useRef } from 'react'
import type { Game, Point } from '../../../../src/model/documents/types.ts'
import type { FieldFrame } from '../../../charts/FieldMap.tsx'
import { useUnits } from '../../../units/system.ts'
import { words } from '../../../words/catalogue.ts'
import { Handle } from './Handle.tsx'
import { sayAt } from './names.ts'
import { rounded } from './partner.ts'
import { CornerShape, EdgePlus, outlinePath } from './shapes.tsx'
import { withZoneCorner, type Zone } from './zone.ts'

/** The zone that is being filled: its corners to be dragged, and where its spots would be. */
export function ZoneMarks(props: {
  game: Game
  frame: FieldFrame
  zone: Zone
  points: readonly Point[]
  grid: number
  metresPerPixel(): number
  onZone(zone: Zone): void
}) {
  const { game, frame, zone, onZone } = props
  const system = useUnits()
  const texts = words().field
  const begun = useRef<Zone | null>(null)
  const { length, width } = game.field
  const step = props.grid || 0.05
  const kept = (value: number, most: number) =>
    rounded(Math.min(most, Math.max(0, props.grid > 0 ? Math.round(value / step) * step : value)))
  const to = (base: Zone, corner: number, [dx, dy]: Point) => {
    const [x, y] = base.outline[corner]!
    onZone(withZoneCorner(base, corner, [kept(x + dx, length), kept(y + dy, width)]))
  }
  return (
    <g>
      <path
        d={outlinePath(frame, zone.outline)}
        style={{ fill: 'var(--note-wash)', stroke: 'var(--note)', pointerEvents: 'none' }}
        strokeDasharray="6 3"
        opacity="0.7"
      />
      <g aria-hidden="true" style={{ pointerEvents: 'none' }}>
        {props.points.map(([x, y]) => (
          <circle key={`${x} ${y}`} cx={frame.x(x)} cy={frame.y(y)} r={4} style={{ fill: 'var(--note)' }} />
        ))}
      </g>
      {zone.shape === 'polygon' &&
        zone.outline.map((corner, edge) => {
          const next = zone.outline[(edge + 1) % zone.outline.length]!
          const middle: Point = [rounded((corner[0] + next[0]) / 2), rounded((corner[1] + next[1]) / 2)]
          return (
            <EdgePlus
              key={`${corner.join(' ')} ${next.join(' ')}`}
              frame={frame}
              a={corner}
              b={next}
              label={texts.addCornerAfter(texts.fill.title, edge + 1)}
              onPress={() => onZone({ ...zone, outline: zone.outline.toSpliced(edge + 1, 0, middle) })}
            />
          )
        })}
      {zone.outline.map((at, corner) => (
        <Handle
          // biome-ignore lint/suspicious/noArrayIndexKey: a corner has nothing of its own but its place
          key={corner}
          handleKey={`zone/${corner}`}
          name={texts.zoneCorner(corner + 1)}
          value={sayAt(at, system)}
          at={at}
          most={length}
          metresPerPixel={props.metresPerPixel}
          touch
          readOnly={false}
          troubled={false}
          actions={{
            onSelect: () => {},
            onDrag: (by) => {
              begun.current ??= zone
              to(begun.current, corner, by)
            },
            onDrop: () => {
              begun.current = null
            },
            onCancel: () => {
              if (begun.current) onZone(begun.current)
              begun.current = null
            },
            onStep: ([x, y]) => to(zone, corner, [x * step, y * step]),
            onStill: () => {},
            onRemove:
              zone.shape === 'polygon' && zone.outline.length > 3
                ? () => onZone({ ...zone, outline: zone.outline.toSpliced(corner, 1) })
                : undefined,
          }}
        >
          <CornerShape frame={frame} at={at} selected={false} troubled={false} />
        </Handle>
      ))}
    </g>
  )
}
