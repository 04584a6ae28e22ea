import type { Point } from '../../../../src/model/documents/types.ts'
import type { FieldFrame } from '../../../charts/FieldMap.tsx'
import { pixel } from '../../../charts/scale.ts'

const ring = (selected: boolean) => ({ stroke: selected ? 'var(--note)' : 'var(--ink)' })

/** Around what is chosen, and beside what does not fit: shapes, so that colour is not the only sign. */
export function Marks(props: { x: number; y: number; selected: boolean; troubled: boolean; r: number }) {
  const { x, y, r } = props
  return (
    <g aria-hidden="true" style={{ pointerEvents: 'none' }}>
      {props.selected && (
        <circle cx={x} cy={y} r={r + 4} fill="none" style={{ stroke: 'var(--note)' }} strokeWidth="2.5" />
      )}
      {props.troubled && (
        <g>
          <path d={`M${x + r - 2} ${y - r - 9}l8 14h-16z`} style={{ fill: 'var(--loss)', stroke: 'var(--sheet)' }} />
          <text
            x={x + r - 2}
            y={y - r + 3}
            fontSize="11"
            fontWeight="700"
            textAnchor="middle"
            style={{ fill: 'var(--sheet)' }}
          >
            !
          </text>
        </g>
      )}
    </g>
  )
}

interface Shown {
  frame: FieldFrame
  at: Point
  selected: boolean
  troubled: boolean
}

export function SpotShape(props: Shown & { letter: string; strong: boolean }) {
  const [x, y] = [props.frame.x(props.at[0]), props.frame.y(props.at[1])]
  return (
    <>
      <circle cx={x} cy={y} r={15} fill="transparent" />
      <circle
        cx={x}
        cy={y}
        r={10}
        style={{ fill: 'var(--sheet)', ...ring(props.selected) }}
        strokeWidth={props.strong ? 2.5 : 1}
      />
      <text x={x} y={y + 4} fontSize="11" fontWeight="700" textAnchor="middle" style={{ pointerEvents: 'none' }}>
        {props.letter}
      </text>
      <Marks x={x} y={y} r={10} selected={props.selected} troubled={props.troubled} />
    </>
  )
}

export function StartShape(props: Shown) {
  const [x, y] = [props.frame.x(props.at[0]), props.frame.y(props.at[1])]
  return (
    <>
      <circle cx={x} cy={y} r={14} fill="transparent" />
      <rect x={x - 6} y={y - 6} width={12} height={12} style={{ fill: 'var(--sheet)', ...ring(props.selected) }} />
      <Marks x={x} y={y} r={8} selected={props.selected} troubled={props.troubled} />
    </>
  )
}

export function CornerShape(props: Shown) {
  const [x, y] = [props.frame.x(props.at[0]), props.frame.y(props.at[1])]
  return (
    <>
      <circle cx={x} cy={y} r={12} fill="transparent" />
      <circle cx={x} cy={y} r={5} style={{ fill: 'var(--note)', stroke: 'var(--sheet)' }} strokeWidth="1.5" />
      <Marks x={x} y={y} r={6} selected={props.selected} troubled={props.troubled} />
    </>
  )
}

export const outlinePath = (frame: FieldFrame, outline: readonly Point[]): string =>
  `M${outline.map(([x, y]) => `${frame.x(x)} ${frame.y(y)}`).join('L')}Z`

/** The obstacle itself is what is taken hold of: an outline to be seen when chosen, and its inside. */
export function ObstacleShape(props: { frame: FieldFrame; outline: Point[]; selected: boolean; troubled: boolean }) {
  const { frame, outline, selected, troubled } = props
  const path = outlinePath(frame, outline)
  const [x, y] = [
    frame.x(outline.reduce((sum, corner) => sum + corner[0], 0) / outline.length),
    frame.y(outline.reduce((sum, corner) => sum + corner[1], 0) / outline.length),
  ]
  return (
    <>
      <path
        d={path}
        fill="transparent"
        style={{ stroke: selected ? 'var(--note)' : troubled ? 'var(--loss)' : 'none' }}
        strokeWidth={3}
        strokeDasharray={selected ? undefined : '5 3'}
      />
      <Marks x={x} y={y} r={6} selected={false} troubled={troubled} />
    </>
  )
}

/** A small plus on an edge: press it, and there is a corner more. */
export function EdgePlus(props: { frame: FieldFrame; a: Point; b: Point; label: string; onPress(): void }) {
  const { frame, a, b } = props
  const [x, y] = [pixel(frame.x((a[0] + b[0]) / 2)), pixel(frame.y((a[1] + b[1]) / 2))]
  return (
    <g
      role="button"
      tabIndex={0}
      aria-label={props.label}
      className="field-handle"
      style={{ cursor: 'copy' }}
      onClick={props.onPress}
      onKeyDown={(event) => {
        if (event.key !== 'Enter' && event.key !== ' ') return
        event.preventDefault()
        props.onPress()
      }}
    >
      <circle cx={x} cy={y} r={12} fill="transparent" />
      <circle cx={x} cy={y} r={6} style={{ fill: 'var(--sheet)', stroke: 'var(--note)' }} />
      <path d={`M${x - 3} ${y}h6M${x} ${y - 3}v6`} style={{ stroke: 'var(--note)' }} strokeWidth="1.5" />
    </g>
  )
}
