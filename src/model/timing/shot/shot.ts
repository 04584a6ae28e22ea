import type { Calculator, Solved } from '../answer/calculator.ts'
import { remark } from '../answer/remark.ts'
import type { ShotCurves, ShotQuantities } from '../answers.ts'
import { gravity } from '../gravity.ts'
import type { ShotInput } from '../inputs.ts'
import { drawnPoints, evenly } from '../numerics/trace.ts'
import type { Remark } from '../types.ts'
import { riseOf, speedToAim, throwOf, vacuumSpeed } from './aim.ts'
import { along, alongRate, flight, height, heightRate, pastDistance } from './flight.ts'
import { marginOf, missOf } from './margin.ts'
import { leastToMeet } from './vacuum.ts'

type Input = ShotInput<number>

const secondsAt = (input: Input, speed: number, tolerance = 1e-9): number | null => {
  const { seconds, event } = flight(throwOf(input, speed), [pastDistance(input.distance)], tolerance)
  return event === null ? null : seconds
}

/** A piece in the air from release to the opening: exit speed, flight time, and what the errors leave of the opening. */
export const shot: Calculator<Input, ShotQuantities, ShotCurves> = {
  units: {
    releaseHeight: 'm',
    angle: 'rad',
    targetHeight: 'm',
    distance: 'm',
    pieceMass: 'kg',
    pieceDiameter: 'm',
    dragCoefficient: '',
    airDensity: 'kg/m³',
    exitSpeed: 'm/s',
  },
  seconds: (input) => {
    const speed = input.exitSpeed ?? speedToAim(input, 1e-7)
    return speed === null ? null : secondsAt(input, speed, 1e-8)
  },
  // The wheel is set once, for the likely values; what varies from trip to trip then varies at that speed.
  asBuilt: (likely) => {
    const speed = likely.exitSpeed ?? speedToAim(likely)
    return (drawn) => (speed === null ? null : secondsAt(drawn, drawn.exitSpeed ?? speed, 1e-8))
  },
  solve: (input): Solved<ShotQuantities, ShotCurves> => {
    const least = leastToMeet({ x: input.distance, y: riseOf(input), gravity })
    const known = { leastSpeed: least.speed, leastAngle: least.angle }
    const speed = input.exitSpeed ?? speedToAim(input)
    const vacuum = vacuumSpeed(input)
    if (speed === null || vacuum === null) {
      return { possible: false, why: outOfReach(input, vacuum), quantities: known, warnings: [] }
    }
    const { state, seconds, event, trace } = flight(throwOf(input, speed), [pastDistance(input.distance)], 1e-10, true)
    if (event === null) return { possible: false, why: neverThere(speed), quantities: known, warnings: [] }
    const time = evenly(0, seconds, drawnPoints)
    const points = time.map((at) => trace.at(at))
    const surface = speed / input.transfer
    const quantities: ShotQuantities = {
      ...known,
      exitSpeed: speed,
      vacuumSpeed: vacuum,
      wheelSpeed: surface / (input.wheelDiameter / 2),
      wheelSurfaceSpeed: surface,
      apex: input.releaseHeight + Math.max(highest(input, speed), 0),
      arrivalSpeed: Math.hypot(state[alongRate]!, state[heightRate]!),
      arrivalAngle: Math.atan2(state[heightRate]!, state[alongRate]!),
      miss: missOf(input, { speed, angle: input.angle }) ?? state[height]! - riseOf(input),
      margin: marginOf(input, speed),
    }
    return {
      possible: true,
      seconds,
      quantities,
      curves: {
        time,
        distance: points.map((at) => at[along]!),
        height: points.map((at) => input.releaseHeight + at[height]!),
      },
      warnings: warningsOf(input, quantities),
    }
  },
}

/** Highest point above the release (m). */
function highest(input: Input, speed: number): number {
  if (input.angle <= 0) return 0
  return flight(throwOf(input, speed), [(at) => -at[heightRate]!], 1e-9).state[height]!
}

function outOfReach(input: Input, vacuum: number | null): Remark {
  if (vacuum !== null) {
    const text = 'No exit speed up to 100 m/s reaches the opening, {distance} m away, against the drag of the air'
    return remark('tooMuchDrag', text, { distance: input.distance })
  }
  const needed = Math.atan2(riseOf(input), input.distance)
  const text =
    'At {angle} rad it passes below the opening however fast it is: the straight line there rises by {needed} rad'
  return remark('aimsTooLow', text, { angle: input.angle, needed })
}

const neverThere = (speed: number): Remark =>
  remark('neverArrives', 'With {speed} m/s the piece is not at the opening within a minute', { speed })

function warningsOf(input: Input, { margin, arrivalAngle, miss }: ShotQuantities): Remark[] {
  const warnings: Remark[] = []
  const { opening, pieceDiameter } = input
  if (opening && pieceDiameter >= opening.size) {
    const text = 'The piece of {piece} m is no smaller than the opening of {size} m'
    warnings.push(remark('doesNotFit', text, { piece: pieceDiameter, size: opening.size }))
  }
  if (opening && margin === null) {
    warnings.push(remark('errorFallsShort', 'At the worst of the errors it does not come to the opening at all'))
  } else if (margin !== null && margin < 0) {
    const text = 'At the worst of the errors it hits the rim: {lack} m are missing'
    warnings.push(remark('hitsRim', text, { lack: -margin }))
  }
  if (opening?.lies === 'level' && arrivalAngle > 0) {
    warnings.push(remark('fromBelow', 'It comes to the level opening from below, still rising'))
  }
  if (!opening && Math.abs(miss) > 0.01) {
    warnings.push(
      remark('misses', 'With this exit speed it passes {miss} m beside the middle', { miss: Math.abs(miss) }),
    )
  }
  return warnings
}
