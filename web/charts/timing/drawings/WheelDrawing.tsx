import type { WheelCurves, WheelQuantities } from '../../../../src/model/timing/index.ts'
import { words } from '../../../words/catalogue.ts'
import { percent } from '../../../words/format.ts'
import { pixel } from '../../scale.ts'
import { steppedScale } from '../geometry/fit.ts'
import { Arrow } from '../marks/Arrow.tsx'
import { Across } from '../marks/Dimension.tsx'
import { Disc } from '../marks/Disc.tsx'
import { ScaleBar } from '../marks/ScaleBar.tsx'
import { arrowsHeight, SpeedArrows, type SpeedRow } from '../marks/SpeedArrows.tsx'
import { sayLength, sayRotation, saySpeed } from '../say.ts'
import type { Drawn } from './props.ts'

/** Side by side from this width on. */
const wide = 520
const pictureWidth = 230

/** A wheel with its speed as the arrow around it and the piece that it throws; then its speeds on one scale. */
export function WheelDrawing(props: Drawn<'wheel', WheelQuantities, WheelCurves>) {
  const { input, motion, width } = props
  const speed = motion?.at.of(motion.curves.speed) ?? input.from
  const rows = rowsOf(props, speed)
  const beside = width >= wide
  const radius = (steppedScale(input.wheelDiameter) * input.wheelDiameter) / 2
  const picture = 2 * radius + 122
  const height = beside ? Math.max(picture, arrowsHeight(rows) + 24) : picture + arrowsHeight(rows) + 12
  const left = beside ? pictureWidth + 26 : 14
  return (
    <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={props.label}>
      <Wheel {...props} radius={radius} speed={speed} x={beside ? 100 : Math.min(120, width / 2 - 30)} />
      <SpeedArrows rows={rows} x={left} y={beside ? 16 : picture + 4} width={width - left - 14} />
    </svg>
  )
}

function rowsOf(
  { input, quantities, motion }: Drawn<'wheel', WheelQuantities, WheelCurves>,
  speed: number,
): SpeedRow[] {
  const text = words().timingCharts.marks
  const rim = (turning: number) => saySpeed((turning * input.wheelDiameter) / 2)
  const { freeSpeed, speedAfterShot, speedLost } = quantities
  const rows: SpeedRow[] = [
    { id: 'target', value: input.target, text: text.target(sayRotation(input.target), rim(input.target)) },
  ]
  if (motion) rows.push({ id: 'now', value: speed, text: text.wheelNow(sayRotation(speed), rim(speed)), now: true })
  if (typeof speedAfterShot === 'number' && typeof speedLost === 'number') {
    const said = text.after(sayRotation(speedAfterShot), percent(speedLost))
    rows.push({ id: 'after', value: speedAfterShot, text: said })
  }
  if (freeSpeed !== undefined && freeSpeed > 0)
    rows.push({ id: 'free', value: freeSpeed, text: text.free(sayRotation(freeSpeed)) })
  return rows
}

interface WheelProps extends Drawn<'wheel', WheelQuantities, WheelCurves> {
  radius: number
  speed: number
  x: number
}

function Wheel({ input, quantities, radius, speed, x, width }: WheelProps) {
  const text = words().timingCharts.marks
  const piece = 0.55 * radius
  const top = 2 * piece + 14
  const y = top + radius
  const most = Math.max(quantities.freeSpeed ?? 0, input.target)
  // Nobody sees a wheel at thousands of turns turn; the arrow around it grows with its speed instead.
  const sweep = Math.max(0, Math.min(1, speed / most)) * 1.4 * Math.PI
  return (
    <g aria-hidden="true">
      <Disc x={x} y={y} radius={radius} spokes={5} turned={-Math.PI / 2} />
      <SpeedArc x={x} y={y} radius={radius + 8} sweep={sweep} />
      {input.shot && (
        <>
          <circle cx={pixel(x)} cy={pixel(top - piece)} r={pixel(piece)} className="piece" />
          <Arrow x={x + piece + 4} y={top - piece} dx={34} dy={0} />
          <text x={pixel(x + piece + 44)} y={pixel(top - piece + 4)} className="halo measure">
            {text.exit(saySpeed(input.shot.exitSpeed))}
          </text>
        </>
      )}
      <Across
        from={x - radius}
        to={x + radius}
        y={y + radius + 24}
        text={sayLength(input.wheelDiameter)}
        width={width}
      />
      <ScaleBar perMetre={(2 * radius) / input.wheelDiameter} x={14} y={y + radius + 56} />
    </g>
  )
}

/** An arrow along the rim, from the right through below, because the piece is on top. */
function SpeedArc({ x, y, radius, sweep }: { x: number; y: number; radius: number; sweep: number }) {
  if (sweep < 0.02) return null
  const at = (angle: number) => [x + radius * Math.cos(angle), y + radius * Math.sin(angle)] as const
  const [sx, sy] = at(0)
  const [ex, ey] = at(sweep)
  const reach = Math.min(9, radius * sweep)
  return (
    <>
      <path
        d={`M${pixel(sx)} ${pixel(sy)}A${pixel(radius)} ${pixel(radius)} 0 ${sweep > Math.PI ? 1 : 0} 1 ${pixel(ex)} ${pixel(ey)}`}
        className="around"
      />
      <Arrow x={ex} y={ey} dx={-reach * Math.sin(sweep)} dy={reach * Math.cos(sweep)} className="now" />
    </>
  )
}
