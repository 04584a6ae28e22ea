import { useId } from 'react'
import type { PivotInput } from '../../../../src/model/timing/index.ts'
import { words } from '../../../words/catalogue.ts'
import { Hatch } from '../../Hatch.tsx'
import { pixel } from '../../scale.ts'
import type { View } from '../geometry/fit.ts'
import { type ArmShape, arc, polar } from '../geometry/swing.ts'
import { Arrow } from '../marks/Arrow.tsx'
import { CentreOfMass } from '../marks/CentreOfMass.tsx'
import { polyline } from '../marks/polyline.ts'
import { sayAngle, sayMass } from '../say.ts'

interface Parts {
  input: PivotInput<number>
  shape: ArmShape
  view: View
  /** Of the arm (rad). */
  angle: number
}

/** Where the arm begins and ends, its stops, and the way between. */
export function Way({ input, shape, view }: Omit<Parts, 'angle'>) {
  const text = words().timingCharts.marks
  const { from, to } = input
  const { length } = shape
  const way = arc(length * 0.86, from, to)
  const [before, last] = [way.at(-2)!, way.at(-1)!]
  const [dx, dy] = [last[0] - before[0], before[1] - last[1]]
  const size = Math.hypot(dx, dy) || 1
  return (
    <g aria-hidden="true">
      <Stops input={input} shape={shape} view={view} />
      <path d={`M${view.x(0)} ${view.y(0)}H${pixel(view.x(length))}`} className="axis" />
      <path d={polyline(way, view)} className="way" />
      <Arrow
        x={view.x(last[0]) - (dx / size) * 11}
        y={view.y(last[1]) - (dy / size) * 11}
        dx={(dx / size) * 11}
        dy={(dy / size) * 11}
      />
      {[from, to].map((angle, end) => (
        <g key={end === 0 ? 'from' : 'to'}>
          <path d={polyline([[0, 0], polar(length, angle)], view)} className="ghost" />
          <Label view={view} radius={length} angle={angle} text={(end === 0 ? text.from : text.to)(sayAngle(angle))} />
        </g>
      ))}
    </g>
  )
}

/** A text just beyond a point of the arm, on the side that is away from the pivot. */
function Label(props: { view: View; radius: number; angle: number; text: string }) {
  const { view, radius, angle } = props
  const [x, y] = polar(radius, angle)
  const [cos, sin] = polar(1, angle)
  return (
    <text
      x={pixel(view.x(x) + 8 * cos)}
      y={pixel(view.y(y) - 10 * sin + 4)}
      textAnchor={cos > 0.35 ? 'start' : cos < -0.35 ? 'end' : 'middle'}
      className="halo measure"
    >
      {props.text}
    </text>
  )
}

/** How far a stop is hatched beyond its angle (rad). */
const depth = 0.14

function Stops({ input, shape, view }: Omit<Parts, 'angle'>) {
  const id = useId()
  if (!input.stops) return null
  const { low, high } = input.stops
  const [inner, outer] = [shape.length * 0.45, shape.length * 0.8]
  const block = (angle: number, beyond: number) =>
    `${polyline([...arc(inner, angle, angle + beyond), ...arc(outer, angle + beyond, angle)], view)}z`
  const edge = (angle: number) => polyline([polar(inner, angle), polar(outer, angle)], view)
  return (
    <>
      <defs>
        <Hatch id={`${id}stop`} />
      </defs>
      {[block(low, -depth), block(high, depth)].map((path) => (
        <path key={path} d={path} fill={`url(#${id}stop)`} />
      ))}
      <path d={edge(low) + edge(high)} className="edge" />
    </>
  )
}

/** The arm itself with its centre of mass, its weight, and the radius of gyration. */
export function ArmBody({ input, shape, view, angle }: Parts) {
  const [cx, cy] = polar(shape.centre, angle)
  const [gx, gy] = polar(shape.gyration, angle)
  const weight = sayMass(input.mass)
  const right = Math.cos(angle) >= 0
  return (
    <g aria-hidden="true">
      <path d={polyline([[0, 0], polar(shape.length, angle)], view)} className="arm" />
      <path d={polyline([[0, 0], polar(shape.length, angle)], view)} className="arm-inside" />
      <circle cx={pixel(view.x(gx))} cy={pixel(view.y(gy))} r="3.5" className="solid" />
      <Arrow x={view.x(cx)} y={view.y(cy) + 6} dx={0} dy={28} />
      <CentreOfMass x={view.x(cx)} y={view.y(cy)} />
      <text
        x={pixel(view.x(cx) + (right ? 8 : -8))}
        y={pixel(view.y(cy) + 34)}
        textAnchor={right ? 'start' : 'end'}
        className="halo measure"
      >
        {weight}
      </text>
    </g>
  )
}

/** A bearing on its foot. */
export function Bearing(props: { x: number; y: number; size?: number }) {
  const { x, y, size = 15 } = props
  return (
    <g aria-hidden="true">
      <path d={`M${pixel(x)} ${pixel(y)}l${size * 0.75} ${size}h${-size * 1.5}z`} className="solid" />
      <path d={`M${pixel(x - size)} ${pixel(y + size)}h${size * 2}`} className="edge heavy" />
      <circle cx={pixel(x)} cy={pixel(y)} r="4" className="filled" />
    </g>
  )
}
