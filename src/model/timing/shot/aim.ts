import { gravity } from '../gravity.ts'
import type { ShotInput } from '../inputs.ts'
import { risingRoot } from '../numerics/root.ts'
import { flight, height, pastDistance, type Throw } from './flight.ts'
import { speedToMeet } from './vacuum.ts'

type Input = ShotInput<number>

/** No wheel here throws faster (m/s). */
export const fastest = 100

/** Deceleration per square of the speed (1/m). */
export const dragOf = ({ airDensity, dragCoefficient, pieceDiameter, pieceMass }: Input): number =>
  (airDensity * dragCoefficient * Math.PI * pieceDiameter ** 2) / 4 / (2 * pieceMass)

/** Height of the opening's middle above the release (m). */
export const riseOf = ({ targetHeight, releaseHeight }: Input): number => targetHeight - releaseHeight

export const throwOf = (input: Input, speed: number): Throw => ({
  speed,
  angle: input.angle,
  drag: dragOf(input),
  gravity,
})

/** Exit speed without drag that meets the middle; null where the angle points below it. */
export const vacuumSpeed = (input: Input): number | null =>
  speedToMeet({ x: input.distance, y: riseOf(input), angle: input.angle, gravity })

/**
 * Exit speed that meets the middle of the opening: in closed form without drag, else by secants on flights, of which a faster
 * one is always higher at the opening. Null where none below 100 m/s does.
 */
export function speedToAim(input: Input, tolerance = 1e-9): number | null {
  const least = vacuumSpeed(input)
  if (least === null || least > fastest) return null
  if (dragOf(input) === 0) return least
  const rise = riseOf(input)
  const over = (speed: number) =>
    flight(throwOf(input, speed), [pastDistance(input.distance)], tolerance).state[height]! - rise
  // Drag only ever asks for more speed, and less height is gained by it than without drag: so these come from below.
  let speed = least
  let off = over(least)
  let slope = (gravity * input.distance ** 2) / (least ** 3 * Math.cos(input.angle) ** 2)
  for (let turn = 0; turn < 12; turn++) {
    const [before, offBefore] = [speed, off]
    speed -= off / slope
    if (!(speed > 0) || speed > fastest) break
    if (Math.abs(speed - before) <= 1e-12 * speed) return speed
    off = over(speed)
    if (off === offBefore) return speed
    slope = (off - offBefore) / (speed - before)
  }
  return fallback(over, least)
}

function fallback(over: (speed: number) => number, least: number): number | null {
  if (over(fastest) < 0) return null
  return risingRoot(over, least, fastest)
}
