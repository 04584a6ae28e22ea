import { useMemo } from 'react'
import type { ShotCurves, ShotQuantities } from '../../../../src/model/timing/index.ts'
import { words } from '../../../words/catalogue.ts'
import { pixel } from '../../scale.ts'
import { around, type Bounds, fitted, type View } from '../geometry/fit.ts'
import { type Point, polar } from '../geometry/swing.ts'
import { bandOf, openingEdges, type Path, pathOf, wheelBelow } from '../geometry/throws.ts'
import { Arrow } from '../marks/Arrow.tsx'
import { Across, keptInside, textWidth, Upright } from '../marks/Dimension.tsx'
import { Disc } from '../marks/Disc.tsx'
import { Ground } from '../marks/Ground.tsx'
import { polyline } from '../marks/polyline.ts'
import { sayAngle, sayLength } from '../say.ts'
import type { Drawn } from './props.ts'

type Props = Drawn<'shot', ShotQuantities, ShotCurves>

/** Exit speed that can be drawn: of the answer, or what was given, or what it would need without drag; null: none is known. */
export const drawnSpeed = ({ input, quantities }: Pick<Props, 'input' | 'quantities'>): number | null =>
  quantities.exitSpeed ?? input.exitSpeed ?? quantities.vacuumSpeed ?? null

/** A piece in the air, from the wheel to the opening, with what its errors can make of it. */
export function ShotDrawing(props: Props) {
  const { input, motion, width } = props
  const speed = drawnSpeed(props)
  // A moving cursor draws anew; the flights stay.
  const path = useMemo(() => (speed === null ? null : pathOf(input, speed)), [input, speed])
  const band = useMemo(() => (speed === null ? null : bandOf(input, speed)), [input, speed])
  const narrow = width < 480
  const release = sayLength(input.releaseHeight)
  const view = fitted(boundsOf(input, [...(path?.points ?? []), ...(band?.upper ?? [])]), {
    width,
    highest: 320,
    margin: { left: Math.max(narrow ? 56 : 74, textWidth(release) + 30), right: narrow ? 62 : 84, top: 26, bottom: 44 },
  })
  const floor = view.y(0)
  const piece = pixel(Math.max(3, (input.pieceDiameter / 2) * view.perMetre))
  const wheel = wheelBelow(input)
  const flown = motion && flownTo(motion, path)
  return (
    <svg width={width} height={view.height} viewBox={`0 0 ${width} ${view.height}`} role="img" aria-label={props.label}>
      <Ground from={2} to={width - 2} y={floor} />
      {band && <path d={`${polyline([...band.lower, ...band.upper.toReversed()], view)}z`} className="band" />}
      {path && <path d={polyline(path.points, view)} className="flight" />}
      <Aim input={input} view={view} />
      <Disc
        x={view.x(wheel[0])}
        y={view.y(wheel[1])}
        radius={(input.wheelDiameter / 2) * view.perMetre}
        turned={-input.angle}
      />
      <Opening input={input} view={view} width={width} />
      <Upright
        from={floor}
        to={view.y(input.releaseHeight)}
        x={Math.max(textWidth(release) + 10, view.x(0) - (input.wheelDiameter / 2) * view.perMetre - 10)}
        text={release}
        side="left"
      />
      <Across
        from={view.x(0)}
        to={view.x(input.distance)}
        y={floor + 20}
        text={sayLength(input.distance)}
        width={width}
      />
      {path && speed !== null && <Apex points={path.points} end={input.distance} view={view} width={width} />}
      {path?.lands && <Landing at={path.points.at(-1)!} view={view} />}
      {[[0, input.releaseHeight] as const, ...(flown ? [flown] : [])].map((at, index) => (
        <circle
          key={index === 0 ? 'release' : 'now'}
          cx={pixel(view.x(at[0]))}
          cy={pixel(view.y(at[1]))}
          r={piece}
          className={index === 0 && flown ? 'ghost' : 'piece'}
        />
      ))}
    </svg>
  )
}

/** Where the piece is; on the floor it stays. */
function flownTo({ curves, at }: NonNullable<Props['motion']>, path: Path | null): Point {
  const there: Point = [at.of(curves.distance), at.of(curves.height)]
  const end = path?.lands ? path.points.at(-1)! : null
  return end && there[0] > end[0] ? end : [there[0], Math.max(0, there[1])]
}

function boundsOf(input: Props['input'], points: readonly Point[]): Bounds {
  const { releaseHeight, distance, targetHeight, wheelDiameter, pieceDiameter } = input
  const [wx, wy] = wheelBelow(input)
  const radius = wheelDiameter / 2
  return around([
    [wx - radius, Math.min(0, wy - radius)],
    [Math.max(distance, wx + radius), Math.max(releaseHeight, targetHeight) + pieceDiameter / 2],
    ...(openingEdges(input) ?? []),
    ...points,
  ])
}

/** The direction of the throw, with its angle from level. */
function Aim({ input, view }: { input: Props['input']; view: View }) {
  const { releaseHeight, angle } = input
  const [x, y] = [view.x(0), view.y(releaseHeight)]
  const [dx, dy] = polar(52, angle)
  const bend = polar(30, angle)
  const label = polar(58, angle / 2)
  return (
    <g aria-hidden="true">
      <path d={`M${pixel(x)} ${pixel(y)}h44`} className="axis" />
      <path
        d={`M${pixel(x + 30)} ${pixel(y)}A30 30 0 0 ${angle > 0 ? 0 : 1} ${pixel(x + bend[0])} ${pixel(y - bend[1])}`}
        className="thin"
      />
      <Arrow x={x} y={y} dx={dx} dy={-dy} />
      <text x={pixel(x + label[0])} y={pixel(y - label[1] + 4)} className="halo measure">
        {sayAngle(angle)}
      </text>
    </g>
  )
}

function Opening({ input, view, width }: { input: Props['input']; view: View; width: number }) {
  const { distance, targetHeight, opening } = input
  const edges = openingEdges(input)
  const [x, y] = [view.x(distance), view.y(targetHeight)]
  const said = sayLength(targetHeight)
  const middle = <path d={`M${pixel(x - 5)} ${pixel(y)}h10M${pixel(x)} ${pixel(y - 5)}v10`} className="edge" />
  if (!edges || !opening) return <g aria-hidden="true">{middle}</g>
  const [low, high] = edges.map(([ex, ey]) => [view.x(ex), view.y(ey)] as const) as [Point, Point]
  const upright = opening.lies === 'upright'
  // To the right of a ring its height is measured, and its size said.
  const level = Math.min(width - 76, x + (opening.size / 2) * view.perMetre + 16)
  return (
    <g aria-hidden="true">
      {middle}
      {upright ? (
        <path
          d={`M${pixel(x)} ${pixel(view.y(0))}V${pixel(Math.min(view.y(0), low[1]))}M${pixel(x)} ${pixel(high[1])}v-18`}
          className="wall"
        />
      ) : (
        <path d={`M${pixel(low[0])} ${pixel(low[1])}h-9M${pixel(high[0])} ${pixel(high[1])}h9`} className="wall" />
      )}
      {upright ? (
        <Upright from={low[1]} to={high[1]} x={x + 14} text={sayLength(opening.size)} side="right" />
      ) : (
        <text x={pixel(level + 7)} y={pixel(y + 4)} className="halo measure">
          {`↔ ${sayLength(opening.size)}`}
        </text>
      )}
      <Upright from={view.y(0)} to={y} x={upright ? x - 12 : level} text={said} side={upright ? 'left' : 'right'} />
    </g>
  )
}

/** The highest point's height, before the opening. */
function Apex(props: { points: readonly Point[]; end: number; view: View; width: number }) {
  const { points, end, view, width } = props
  const top = points.reduce((best, each) => (each[1] > best[1] ? each : best))
  // At its beginning or end a path has no top of its own.
  if (top === points[0] || top === points.at(-1)) return null
  // Beside the release its text would lie on that of the angle; the table has it too.
  if (Math.abs(view.x(top[0]) - view.x(0)) < 90 && view.y(points[0]![1]) - view.y(top[1]) < 80) return null
  const text = words().timingCharts.marks.apex(sayLength(top[1]))
  return (
    <text
      x={pixel(Math.min(keptInside(view.x(top[0]), text, width), view.x(end) - textWidth(text) / 2 - 8))}
      y={pixel(view.y(top[1]) - 12)}
      textAnchor="middle"
      className="halo measure"
      aria-hidden="true"
    >
      {text}
    </text>
  )
}

function Landing({ at, view }: { at: Point; view: View }) {
  const [x, y] = [view.x(at[0]), view.y(at[1])]
  return <path d={`M${pixel(x - 6)} ${pixel(y - 6)}l12 12m0 -12l-12 12`} className="cross" aria-hidden="true" />
}
