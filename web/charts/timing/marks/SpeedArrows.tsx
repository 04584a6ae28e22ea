import { pixel } from '../../scale.ts'
import { Arrow } from './Arrow.tsx'

export interface SpeedRow {
  id: string
  /** In one unit for all rows. */
  value: number
  text: string
  /** What it is at the moment shown. */
  now?: boolean
}

const rowHeight = 34

export const arrowsHeight = (rows: readonly SpeedRow[]): number => rows.length * rowHeight

/** Speeds as arrows on one scale, each under its name, so that no two texts meet. */
export function SpeedArrows(props: { rows: readonly SpeedRow[]; x: number; y: number; width: number }) {
  const { rows, x, y, width } = props
  const most = Math.max(...rows.map(({ value }) => value), 1e-9)
  return (
    <g aria-hidden="true">
      {rows.map((row, index) => {
        const top = y + index * rowHeight
        const middle = top + 22
        return (
          <g key={row.id}>
            <text x={x} y={top + 12} className="halo measure">
              {row.text}
            </text>
            <line x1={x} x2={x} y1={middle - 5} y2={middle + 5} className="edge" />
            <Arrow x={x} y={middle} dx={pixel((width * row.value) / most)} dy={0} className={row.now ? 'now' : ''} />
          </g>
        )
      })}
    </g>
  )
}
