import { useId } from 'react'
import type { CylinderCurves, CylinderQuantities } from '../../../../src/model/timing/index.ts'
import { words } from '../../../words/catalogue.ts'
import { Hatch } from '../../Hatch.tsx'
import { pixel } from '../../scale.ts'
import { fitted } from '../geometry/fit.ts'
import { type Tube, tubeOf } from '../geometry/tube.ts'
import { Arrow } from '../marks/Arrow.tsx'
import { Across, keptInside, textWidth, Upright } from '../marks/Dimension.tsx'
import { ScaleBar } from '../marks/ScaleBar.tsx'
import { sayForce, sayLength, sayMass, sayPressure } from '../say.ts'
import type { Drawn } from './props.ts'

type Props = Drawn<'cylinder', CylinderQuantities, CylinderCurves>

/** Thinner than this (px) nothing could be seen in it. */
const thinnest = 26
const room = { highest: 110, margin: { left: 66, right: 20, top: 46, bottom: 104 } }

/** Pixels per metre along the cylinder and across it; across is larger where it would be too thin to be seen. */
export function cylinderView(tube: Tube, width: number) {
  const view = fitted(tube.bounds, { width, ...room })
  const across = Math.max(view.perMetre, thinnest / tube.bore)
  const half = (tube.bore / 2 + tube.wall) * across
  const middle = room.margin.top + half
  return { x: view.x, across, middle, height: middle + half + room.margin.bottom, perMetre: view.perMetre }
}

/** A cylinder cut open with its piston, rod, stop, ports, and what it moves. */
export function CylinderDrawing(props: Props) {
  const { input, motion, width } = props
  const tube = tubeOf(input)
  const view = cylinderView(tube, width)
  const gone = motion?.at.of(motion.curves.distance) ?? 0
  const piston = tube.from + (tube.to > tube.from ? gone : -gone)
  const { across, middle } = view
  const [low, high] = [middle - (tube.bore / 2) * across, middle + (tube.bore / 2) * across]
  const under = high + tube.wall * across
  const faces = [tube.from, tube.to].map((face) => view.x(face)).toSorted((a, b) => a - b) as [number, number]
  const [push, back] = motion
    ? [motion.at.of(motion.curves.pressure), motion.at.of(motion.curves.backPressure)]
    : [input.pressure, input.ambient]
  const [behind, before] = input.direction === 'extend' ? [push, back] : [back, push]
  const full = Math.max(input.pressure, input.ambient)
  return (
    <svg width={width} height={view.height} viewBox={`0 0 ${width} ${view.height}`} role="img" aria-label={props.label}>
      <g aria-hidden="true">
        <Chamber from={view.x(0)} to={view.x(piston)} low={low} high={high} pressure={behind} full={full} />
        <Chamber
          from={view.x(piston + tube.piston)}
          to={view.x(tube.inside)}
          low={low}
          high={high}
          pressure={before}
          full={full}
        />
        <Shell tube={tube} view={view} low={low} high={high} />
        <Moving tube={tube} view={view} piston={piston} low={low} high={high} />
      </g>
      <Ports {...props} tube={tube} view={view} top={low - tube.wall * across} />
      <Stop tube={tube} view={view} low={low} high={high} extends={input.direction === 'extend'} />
      <Across
        from={faces[0]}
        to={faces[1]}
        y={under + 20}
        text={sayLength(Math.abs(tube.to - tube.from))}
        width={width}
      />
      <Upright
        from={low}
        to={high}
        x={view.x(0) - Math.max(8, tube.wall * across + 6)}
        text={sayLength(tube.bore)}
        side="left"
      />
      <Load {...props} tube={tube} view={view} piston={piston} y={under + 52} />
      <ScaleBar perMetre={view.perMetre} x={12} y={view.height - 10} />
    </svg>
  )
}

type View = ReturnType<typeof cylinderView>

/** The share of the highest pressure is how dark it is; where there is room the pressure stands in it, above the rod. */
function Chamber(props: { from: number; to: number; low: number; high: number; pressure: number; full: number }) {
  const { from, to, low, high, pressure, full } = props
  const said = sayPressure(pressure)
  const share = Math.min(1, Math.max(0, pressure / full))
  return (
    <>
      <rect
        x={pixel(from)}
        y={pixel(low)}
        width={pixel(Math.max(0, to - from))}
        height={pixel(high - low)}
        className="chamber"
        fillOpacity={pixel(share * 0.75)}
      />
      {to - from > textWidth(said) + 6 && (
        <text x={pixel((from + to) / 2)} y={pixel(low + 12)} textAnchor="middle" className="measure">
          {said}
        </text>
      )}
    </>
  )
}

function Shell({ tube, view, low, high }: { tube: Tube; view: View; low: number; high: number }) {
  const wall = Math.max(3, tube.wall * view.across)
  const [left, right] = [view.x(0), view.x(tube.inside)]
  const gap = Math.max(2, (tube.rod / 2) * view.across)
  const { middle } = view
  const caps = `M${pixel(left - wall)} ${pixel(low - wall)}H${pixel(right + wall)}V${pixel(middle - gap)}H${pixel(right)}V${pixel(low)}H${pixel(left)}V${pixel(high)}H${pixel(right)}V${pixel(middle + gap)}H${pixel(right + wall)}V${pixel(high + wall)}H${pixel(left - wall)}z`
  return <path d={caps} className="shell" />
}

function Moving(props: { tube: Tube; view: View; piston: number; low: number; high: number }) {
  const { tube, view, piston, low, high } = props
  const face = piston + tube.piston
  const rod = Math.max(3, tube.rod * view.across)
  const end = view.x(face + tube.rodLength)
  return (
    <>
      <rect
        x={pixel(view.x(piston))}
        y={pixel(low + 1)}
        width={pixel(Math.max(3, tube.piston * view.perMetre))}
        height={pixel(high - low - 2)}
        className="body heavy"
      />
      <rect
        x={pixel(view.x(face))}
        y={pixel(view.middle - rod / 2)}
        width={pixel(Math.max(0, end - view.x(face)))}
        height={pixel(rod)}
        className="solid"
      />
      <rect
        x={pixel(end)}
        y={pixel(low)}
        width={pixel(Math.max(4, tube.block * view.perMetre))}
        height={pixel(high - low)}
        rx="2"
        className="piece"
      />
    </>
  )
}

function Ports({ input, tube, view, top }: Props & { tube: Tube; view: View; top: number }) {
  const text = words().timingCharts.marks
  const inset = Math.max(4, tube.piston * 0.5 * view.perMetre)
  const places = [view.x(0) + inset, view.x(tube.inside) - inset] as const
  const [supply, exhaust] = input.direction === 'extend' ? places : [places[1], places[0]]
  return (
    <g aria-hidden="true">
      <Arrow x={supply} y={top - 26} dx={0} dy={24} className="now" />
      <Arrow x={exhaust} y={top - 2} dx={0} dy={-24} />
      <text x={pixel(supply + 7)} y={pixel(top - 14)} className="halo measure">
        {text.in}
      </text>
      <text x={pixel(exhaust - 7)} y={pixel(top - 14)} textAnchor="end" className="halo measure">
        {text.out}
      </text>
    </g>
  )
}

/** The hard stop stands in the block's way: behind it when it comes out, before it when it goes in. */
function Stop(props: { tube: Tube; view: View; low: number; high: number; extends: boolean }) {
  const id = useId()
  const { tube, view, low, high } = props
  if (tube.stop === null) return null
  const start = tube.stop + tube.piston + tube.rodLength
  const width = Math.max(6, 0.3 * tube.block * view.perMetre)
  const x = props.extends ? view.x(start) + Math.max(4, tube.block * view.perMetre) : view.x(start) - width
  const face = props.extends ? x : x + width
  // A rod goes through what stands before its block: only the half below is a stop there.
  const [from, to] = props.extends ? [low - 4, high + 4] : [view.middle + (tube.rod / 2) * view.across + 2, high + 4]
  return (
    <g aria-hidden="true">
      <defs>
        <Hatch id={`${id}stop`} />
      </defs>
      <rect
        x={pixel(x)}
        y={pixel(from)}
        width={pixel(width)}
        height={pixel(Math.max(2, to - from))}
        fill={`url(#${id}stop)`}
      />
      <path d={`M${pixel(face)} ${pixel(from)}V${pixel(to)}`} className="edge heavy" />
    </g>
  )
}

/** The force of the air on what is moved, and what is against it, on one scale. */
function Load({
  input,
  quantities,
  tube,
  view,
  piston,
  y,
  width,
}: Props & { tube: Tube; view: View; piston: number; y: number }) {
  const text = words().timingCharts.marks
  const { force = 0 } = quantities
  const most = Math.max(force, Math.abs(input.load), 1e-9)
  const way = input.direction === 'extend' ? 1 : -1
  const x = view.x(piston + tube.piston + tube.rodLength)
  const reach = Math.min(64, width / 5)
  const at = Math.min(width - reach - 4, Math.max(reach + 4, x))
  const load = (input.load < 0 ? text.helped : text.load)(
    sayForce(force),
    sayMass(input.mass),
    sayForce(Math.abs(input.load)),
  )
  return (
    <g aria-hidden="true">
      <Arrow x={at} y={y - 6} dx={(way * reach * force) / most} dy={0} className="now" />
      <Arrow x={at} y={y + 6} dx={(-way * reach * input.load) / most} dy={0} />
      <text x={pixel(keptInside(at, load, width))} y={pixel(y + 24)} textAnchor="middle" className="halo measure">
        {load}
      </text>
    </g>
  )
}
