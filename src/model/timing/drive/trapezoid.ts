import type { Trapezoid } from '../answers.ts'
import { minimum } from '../numerics/minimum.ts'
import type { Chassis } from './chassis.ts'
import { wayOf } from './way.ts'

export interface Leg {
  length: number
  weight: number
}

/**
 * The drive of a Robot document whose times come closest to this one's over the game's legs, in the least squares of
 * seconds, each leg weighted by how often it is driven. The deceleration is the chassis' own, because both brake alike; top
 * speed and acceleration are sought.
 */
export function trapezoidOf(chassis: Chassis, legs: readonly Leg[]): Trapezoid {
  const { deceleration, motion, acceleration } = chassis
  const timed = legs.map(({ length, weight }) => ({
    length,
    weight,
    seconds: wayOf(chassis, { distance: length, stops: true }).seconds,
  }))
  const weights = timed.reduce((sum, { weight }) => sum + weight, 0)
  const squares = (topSpeed: number, launch: number) =>
    timed.reduce((sum, { length, weight, seconds }) => {
      const off = trapezoidSeconds(length, { topSpeed, acceleration: launch, deceleration }) - seconds
      return sum + weight * off * off
    }, 0) / weights
  // In logarithms, so that neither can become negative. Neither can be better than the chassis at its best.
  const found = minimum(
    ([top, launch]) => squares(Math.exp(top!), Math.exp(launch!)),
    [Math.log(motion.top * 0.95), Math.log(acceleration * 0.8)],
  )
  const [topSpeed, fitted] = found.at.map(Math.exp) as [number, number]
  const each = timed.map(({ length, seconds }) => ({
    length,
    seconds,
    fitted: trapezoidSeconds(length, { topSpeed, acceleration: fitted, deceleration }),
  }))
  return {
    topSpeed,
    acceleration: fitted,
    deceleration,
    rms: Math.sqrt(found.value),
    worst: Math.max(...each.map((leg) => Math.abs(leg.fitted - leg.seconds))),
    legs: each,
  }
}

/**
 * Rest to rest over a straight line with constant acceleration and deceleration.
 *
 * Source: Biagiotti & Melchiorri, Trajectory Planning for Automatic Machines and Robots (2008), section 3.2.
 */
export function trapezoidSeconds(
  length: number,
  { topSpeed, acceleration, deceleration }: { topSpeed: number; acceleration: number; deceleration: number },
): number {
  const inverse = 1 / acceleration + 1 / deceleration
  if (length < (topSpeed ** 2 * inverse) / 2) return Math.sqrt(2 * length * inverse)
  return length / topSpeed + (topSpeed * inverse) / 2
}
