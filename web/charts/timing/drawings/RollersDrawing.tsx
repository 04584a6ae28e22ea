import type { MotionCurves, RollersQuantities } from '../../../../src/model/timing/index.ts'
import { words } from '../../../words/catalogue.ts'
import { pixel } from '../../scale.ts'
import { bedOf } from '../geometry/bed.ts'
import { fitted } from '../geometry/fit.ts'
import { Across } from '../marks/Dimension.tsx'
import { Disc } from '../marks/Disc.tsx'
import { Ground } from '../marks/Ground.tsx'
import { ScaleBar } from '../marks/ScaleBar.tsx'
import { arrowsHeight, SpeedArrows } from '../marks/SpeedArrows.tsx'
import { sayLength, saySpeed } from '../say.ts'
import type { Drawn } from './props.ts'

/** Rollers over a plate with the piece on its way in, and the speeds that have to match. */
export function RollersDrawing(props: Drawn<'rollers', RollersQuantities, MotionCurves>) {
  const { input, quantities, motion, width } = props
  const text = words().timingCharts.marks
  const bed = bedOf(input)
  const view = fitted(bed.bounds, { width, highest: 150, margin: { left: 14, right: 14, top: 12, bottom: 78 } })
  const gone = motion?.at.of(motion.curves.distance) ?? 0
  const speed = motion?.at.of(motion.curves.speed) ?? 0
  const floor = view.y(0)
  const slides = quantities.slidingDistance ?? 0
  const surface = quantities.surfaceSpeed ?? 0
  const rows = [
    { id: 'surface', value: surface, text: text.surface(saySpeed(surface)) },
    { id: 'piece', value: speed, text: text.pieceNow(saySpeed(speed)), now: true },
    { id: 'drive', value: input.driveSpeed, text: text.driving(saySpeed(input.driveSpeed)) },
  ]
  const height = view.height + arrowsHeight(rows) + 8
  // Without slip the rollers turn as far as the piece has come; its speed and theirs differ by the slip.
  const turned = (-2 * gone) / (1 - input.slip) / input.rollerDiameter
  return (
    <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={props.label}>
      <Ground from={view.x(bed.bounds.left)} to={view.x(bed.bounds.right)} y={floor} />
      <Piece x={view.x(0)} size={bed.piece * view.perMetre} floor={floor} ghost />
      <Piece x={view.x(input.travel)} size={bed.piece * view.perMetre} floor={floor} ghost />
      <Piece x={view.x(gone)} size={bed.piece * view.perMetre} floor={floor} />
      {bed.rollers.map((x) => (
        <Disc
          key={x}
          x={view.x(x)}
          y={view.y(bed.axisHeight)}
          radius={(input.rollerDiameter / 2) * view.perMetre}
          turned={turned}
        />
      ))}
      <Across from={view.x(0)} to={view.x(input.travel)} y={floor + 20} text={sayLength(input.travel)} width={width} />
      {slides > 0.02 * input.travel && (
        <g aria-hidden="true">
          <path d={`M${pixel(view.x(0))} ${pixel(floor - 5)}H${pixel(view.x(slides))}`} className="sliding" />
          <text x={pixel(view.x(0))} y={pixel(floor + 54)} className="halo measure">
            {text.slides(sayLength(slides))}
          </text>
        </g>
      )}
      <ScaleBar perMetre={view.perMetre} x={Math.max(16, width - 150)} y={floor + 50} />
      <SpeedArrows rows={rows} x={14} y={view.height} width={width - 28} />
    </svg>
  )
}

function Piece(props: { x: number; size: number; floor: number; ghost?: boolean }) {
  const { x, size, floor } = props
  return (
    <rect
      x={pixel(x - size / 2)}
      y={pixel(floor - size)}
      width={pixel(size)}
      height={pixel(size)}
      rx={pixel(size * 0.3)}
      className={props.ghost ? 'ghost' : 'piece'}
      aria-hidden="true"
    />
  )
}
