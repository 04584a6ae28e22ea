import type { DriveQuantities, MotionCurves } from '../../../../src/model/timing/index.ts'
import { words } from '../../../words/catalogue.ts'
import { pixel } from '../../scale.ts'
import { type WayLayout, wayLayout } from '../geometry/way.ts'
import { Arrow } from '../marks/Arrow.tsx'
import { Across, keptInside } from '../marks/Dimension.tsx'
import { Disc } from '../marks/Disc.tsx'
import { Ground } from '../marks/Ground.tsx'
import { momentAt } from '../moment.ts'
import { sayLength, saySpeed } from '../say.ts'
import type { Drawn } from './props.ts'

const above = 34
const stripHeight = 76

/** A robot on its way, and under it how fast it is where. */
export function DriveDrawing(props: Drawn<'drive', DriveQuantities, MotionCurves>) {
  const { input, quantities, motion, width } = props
  const way = wayLayout(input, width)
  const floor = above + way.robotHeight
  const strip = floor + 62
  const height = motion ? strip + stripHeight + 8 : floor + 34
  const gone = motion?.at.of(motion.curves.distance) ?? 0
  const speed = motion?.at.of(motion.curves.speed) ?? 0
  const x = way.x(gone)
  const said = saySpeed(speed)
  return (
    <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={props.label}>
      <Ground from={2} to={width - 2} y={floor} />
      <Robot way={way} x={way.x(0)} floor={floor} ghost />
      <Robot way={way} x={way.x(input.distance)} floor={floor} ghost />
      <Robot way={way} x={x} floor={floor} turned={(gone * 2) / input.wheelDiameter} />
      {motion && (
        <>
          <Arrow
            x={x}
            y={above - 8}
            dx={(speed / (quantities.peakSpeed || 1)) * (way.robotWidth / 2 + 8)}
            dy={0}
            className="now"
          />
          <text
            x={pixel(keptInside(x, said, width))}
            y={above - 18}
            textAnchor="middle"
            className="halo measure strong"
          >
            {said}
          </text>
        </>
      )}
      <Across
        from={way.x(0)}
        to={way.x(input.distance)}
        y={floor + 18}
        text={sayLength(input.distance)}
        width={width}
      />
      {motion && <SpeedStrip {...props} motion={motion} way={way} y={strip} x={x} speed={speed} />}
    </svg>
  )
}

function Robot(props: { way: WayLayout; x: number; floor: number; ghost?: boolean; turned?: number }) {
  const { way, x, floor, ghost } = props
  const { radius, robotWidth, robotHeight } = way
  const reach = robotWidth / 2 - Math.max(radius, robotWidth * 0.12)
  const bottom = floor - radius * 0.9
  const frame = {
    x: pixel(x - robotWidth / 2),
    y: pixel(floor - robotHeight),
    width: pixel(robotWidth),
    height: pixel(Math.max(2, bottom - floor + robotHeight)),
  }
  if (ghost) return <rect {...frame} height={pixel(robotHeight)} rx="3" className="ghost" />
  return (
    <g aria-hidden="true">
      <rect {...frame} rx="3" className="body" />
      {[-reach, reach].map((side) => (
        <Disc
          key={side < 0 ? 'rear' : 'front'}
          x={x + side}
          y={floor - radius}
          radius={radius}
          turned={props.turned ?? 0}
        />
      ))}
    </g>
  )
}

interface Strip extends Drawn<'drive', DriveQuantities, MotionCurves> {
  motion: NonNullable<Drawn<'drive', DriveQuantities, MotionCurves>['motion']>
  way: WayLayout
  y: number
  x: number
  speed: number
}

function SpeedStrip({ quantities, motion, way, y, x, speed, width }: Strip) {
  const text = words().timingCharts.marks
  const { distance, speed: speeds, time } = motion.curves
  const { peakSpeed = 0, topSpeed = 0, runningSeconds = 0, brakingSeconds = 0 } = quantities
  const most = Math.max(peakSpeed, Math.min(topSpeed, 1.5 * peakSpeed), 1e-9) * 1.08
  const base = y + stripHeight
  const up = (value: number) => base - (value / most) * stripHeight
  const points = distance.map((metres, i) => `${pixel(way.x(metres))} ${pixel(up(speeds[i]!))}`)
  const ends = [way.x(0), way.x(distance.at(-1)!)] as const
  const braking = brakingSeconds > 0 ? momentAt(time, runningSeconds / time.at(-1)!).of(distance) : null
  const brakes = braking === null ? '' : text.brakes(sayLength(braking))
  const showTop = topSpeed <= most
  const top = showTop ? text.top(saySpeed(topSpeed)) : text.peak(saySpeed(peakSpeed))
  const level = up(showTop ? topSpeed : peakSpeed)
  return (
    <g aria-hidden="true">
      <path d={`M${pixel(ends[0])} ${base}L${points.join('L')}V${base}z`} className="body" />
      <path d={`M${pixel(ends[0])} ${base}H${pixel(ends[1])}`} className="edge" />
      <path d={`M${pixel(ends[0])} ${pixel(level)}H${pixel(ends[1])}`} className="limit" />
      {braking !== null && (
        <>
          <path d={`M${pixel(way.x(braking))} ${y}V${base}`} className="limit" />
          <text
            x={pixel(keptInside(way.x(braking), brakes, width))}
            y={base - 8}
            textAnchor="middle"
            className="halo measure"
          >
            {brakes}
          </text>
        </>
      )}
      <text
        x={pixel(keptInside((ends[0] + ends[1]) / 2, top, width))}
        y={y - 4}
        textAnchor="middle"
        className="halo measure"
      >
        {top}
      </text>
      <circle cx={pixel(x)} cy={pixel(up(speed))} r="5" className="here" />
    </g>
  )
}
