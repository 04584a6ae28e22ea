import type { ShotInput } from '../inputs.ts'
import { riseOf, throwOf } from './aim.ts'
import { along, fallenTo, flight, height, pastDistance } from './flight.ts'

type Input = ShotInput<number>

/**
 * How far a throw misses the middle of the opening (m): by height at an upright gap, by distance where it falls through a level
 * ring's height. Null where it never comes there.
 */
export function missOf(input: Input, thrown: { speed: number; angle: number }): number | null {
  const to = { ...throwOf(input, thrown.speed), angle: thrown.angle }
  if (input.opening?.lies !== 'level') {
    const { state, event } = flight(to, [pastDistance(input.distance)], 1e-9)
    return event === null ? null : state[height]! - riseOf(input)
  }
  const rise = riseOf(input)
  // A throw that stays below the ring would fall on and on: it has missed once it is past by ten times the way and lower.
  const lost = (at: Float64Array) => (at[height]! < Math.min(0, rise) - 0.01 ? 1 : -1)
  const { state, event } = flight(to, [fallenTo(rise), lost], 1e-9)
  const reached = event === 0 && highestOf(to, rise)
  return reached ? state[along]! - input.distance : null
}

/** Whether a throw comes up to a height at all. */
function highestOf(thrown: ReturnType<typeof throwOf>, rise: number): boolean {
  if (rise <= 0) return true
  const { state } = flight(thrown, [(at) => -at[3]!], 1e-9)
  return state[height]! >= rise
}

/**
 * What is left between the piece and the rim at the worst of the four corners of speed and angle error (m); below 0 it hits the
 * rim. Null without an opening, or where a corner does not come there.
 */
export function marginOf(input: Input, speed: number): number | null {
  const { opening, speedError, angleError, angle, pieceDiameter } = input
  if (!opening) return null
  const corners = [-1, 1].flatMap((a) =>
    [-1, 1].map((b) => ({ speed: speed * (1 + a * speedError), angle: angle + b * angleError })),
  )
  const misses = [{ speed, angle }, ...corners].map((thrown) => missOf(input, thrown))
  if (misses.some((miss) => miss === null)) return null
  return (opening.size - pieceDiameter) / 2 - Math.max(...misses.map((miss) => Math.abs(miss!)))
}
