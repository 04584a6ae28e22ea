import type {
  CylinderPivotInput,
  MotorPivotInput,
  PivotCurves,
  PivotQuantities,
} from '../../../../src/model/timing/index.ts'
import { plain } from '../../../words/format.ts'
import { pixel } from '../../scale.ts'
import { around, type Bounds, fitted, type View } from '../geometry/fit.ts'
import { linkageAt } from '../geometry/linkage.ts'
import { arc, armShape, swept } from '../geometry/swing.ts'
import { keptInside } from '../marks/Dimension.tsx'
import { polyline } from '../marks/polyline.ts'
import { ScaleBar } from '../marks/ScaleBar.tsx'
import { sayLength } from '../say.ts'
import { ArmBody, Bearing, Way } from './Arm.tsx'
import type { Drawn } from './props.ts'

const margin = { left: 84, right: 84, top: 24, bottom: 78 }

/** An arm from the side, turned by a motor or by a cylinder. */
export function PivotDrawing(props: Drawn<'pivot', PivotQuantities, PivotCurves>) {
  const { input, motion, width } = props
  const angle = motion?.at.of(motion.curves.angle) ?? input.from
  const shape = armShape(input)
  const box = swept(shape.length, input.from, input.to)
  const bounds = input.by === 'cylinder' ? joined(box, reachOf(input)) : box
  const view = fitted(bounds, {
    width,
    highest: 300,
    margin: { ...margin, ...(width < 480 && { left: 70, right: 70 }) },
  })
  return (
    <svg width={width} height={view.height} viewBox={`0 0 ${width} ${view.height}`} role="img" aria-label={props.label}>
      <Way input={input} shape={shape} view={view} />
      {input.by === 'cylinder' && <Cylinder input={input} view={view} angle={angle} />}
      <Bearing x={view.x(0)} y={view.y(0)} />
      <ArmBody input={input} shape={shape} view={view} angle={angle} />
      {input.by === 'motor' && <Motor input={input} view={view} width={width} />}
      <ScaleBar perMetre={view.perMetre} x={12} y={view.height - 10} />
    </svg>
  )
}

/** The motor's sign in circuit diagrams, driving the bearing, with its reduction. */
function Motor({ input, view, width }: { input: MotorPivotInput<number>; view: View; width: number }) {
  const ratio = `${plain(input.reduction, 2)} : 1`
  const [x, y] = [view.x(0) - 34, view.y(0) + 22]
  return (
    <g aria-hidden="true">
      <path d={`M${pixel(view.x(0))} ${pixel(view.y(0))}L${pixel(x)} ${pixel(y)}`} className="way" />
      <circle cx={pixel(x)} cy={pixel(y)} r="12" className="solid" />
      <text x={pixel(x)} y={pixel(y + 5)} textAnchor="middle" className="measure strong">
        M
      </text>
      <text x={pixel(keptInside(x, ratio, width))} y={pixel(y + 27)} textAnchor="middle" className="halo measure">
        {ratio}
      </text>
    </g>
  )
}

function Cylinder({ input, view, angle }: { input: CylinderPivotInput<number>; view: View; angle: number }) {
  const link = linkageAt(input, angle)
  const { frame, hinge, tubeEnd } = link
  const thick = (metres: number, least: number) => Math.max(least, metres * view.perMetre)
  const tube = polyline([frame, tubeEnd], view)
  const bore = thick(input.cylinder.bore, 7)
  return (
    <g aria-hidden="true" className={link.fits === 'yes' ? undefined : 'misfit'}>
      <path
        d={polyline(arc(input.radius, input.from + input.offset, input.to + input.offset), view)}
        className="axis"
      />
      <path d={polyline([[0, 0], hinge], view)} className="arm" />
      <path d={polyline([[0, 0], hinge], view)} className="arm-inside" />
      <path d={polyline([tubeEnd, hinge], view)} className="rod" strokeWidth={pixel(thick(input.cylinder.rod, 3))} />
      <path d={tube} className="tube" strokeWidth={pixel(bore)} />
      <path d={tube} className="tube-inside" strokeWidth={pixel(bore - 3)} />
      <circle cx={pixel(view.x(frame[0]))} cy={pixel(view.y(frame[1]))} r="5" className="solid" />
      <path d={`M${pixel(view.x(frame[0]) - 11)} ${pixel(view.y(frame[1]) + 9)}h22`} className="edge heavy" />
      <circle cx={pixel(view.x(hinge[0]))} cy={pixel(view.y(hinge[1]))} r="4" className="filled" />
      <text
        x={pixel((view.x(frame[0]) + view.x(hinge[0])) / 2 - bore / 2 - 8)}
        y={pixel((view.y(frame[1]) + view.y(hinge[1])) / 2 + 4)}
        textAnchor="end"
        className="halo measure"
      >
        {sayLength(link.length)}
      </text>
    </g>
  )
}

/** Where the cylinder and its lever come. */
const reachOf = (input: CylinderPivotInput<number>): Bounds =>
  around([input.frame, ...arc(input.radius, input.from + input.offset, input.to + input.offset)])

const joined = (a: Bounds, b: Bounds): Bounds => ({
  left: Math.min(a.left, b.left),
  right: Math.max(a.right, b.right),
  bottom: Math.min(a.bottom, b.bottom),
  top: Math.max(a.top, b.top),
})
