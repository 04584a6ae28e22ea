import { risingRoot } from '../numerics/root.ts'

/**
 * A mass that is pushed by a force which is capped and otherwise falls in a straight line with speed, against a constant
 * resistance: `mass · acceleration = min(cap, standstill − perSpeed · speed) − resistance`. The same for things that turn,
 * with torque, inertia and angular speed. Any consistent SI units.
 */
export interface Launch {
  mass: number
  cap: number
  standstill: number
  perSpeed: number
  resistance: number
  /** Speed at the beginning. */
  from: number
}

/** The solution in closed form: constant acceleration up to the knee, then an exponential approach to the top speed. */
export interface Run {
  /** Speed up to which the cap holds; 0 where it never does. */
  knee: number
  /** Where the force only just overcomes the resistance. */
  top: number
  /** Of the exponential part (s). */
  timeConstant: number
  speedAt(seconds: number): number
  distanceAt(seconds: number): number
  forceAt(speed: number): number
  /** Seconds to a speed between the first and the top one; Infinity at or beyond the top. */
  toSpeed(speed: number): number
  /** Seconds to a distance. */
  toDistance(distance: number): number
  /** Seconds until braking with a deceleration has to begin, to stand at a distance. */
  toBrake(distance: number, deceleration: number): number
}

/**
 * The run of a launch. It needs a force above the resistance at its first speed; who calls it has looked.
 *
 * Source: first-order linear equation; with the cap and for a sprint Keller, Physics Today 26(9) (1973), 43–47.
 */
export function run({ mass, cap, standstill, perSpeed, resistance, from }: Launch): Run {
  const top = (Math.min(standstill, Number.MAX_VALUE) - resistance) / perSpeed
  const knee = Math.max(0, (standstill - cap) / perSpeed)
  const timeConstant = mass / perSpeed
  const capped = (cap - resistance) / mass
  const free = Math.max(from, knee)
  const kneeSeconds = from < knee ? (knee - from) / capped : 0
  const kneeDistance = from < knee ? (knee ** 2 - from ** 2) / (2 * capped) : 0

  const speedAt = (seconds: number) => {
    if (seconds < kneeSeconds) return from + capped * seconds
    return top - (top - free) * Math.exp((kneeSeconds - seconds) / timeConstant)
  }
  const distanceAt = (seconds: number) => {
    if (seconds < kneeSeconds) return from * seconds + (capped * seconds ** 2) / 2
    const rest = seconds - kneeSeconds
    return kneeDistance + top * rest + (top - free) * timeConstant * Math.expm1(-rest / timeConstant)
  }
  const toDistance = (distance: number) => {
    if (distance <= kneeDistance) return (2 * distance) / (from + Math.sqrt(from ** 2 + 2 * capped * distance))
    // From the knee on it is at most one time constant behind what would move at top speed at once.
    const latest = kneeSeconds + (distance - kneeDistance) / top + timeConstant
    return risingRoot((seconds) => distanceAt(seconds) - distance, kneeSeconds, latest)
  }
  return {
    knee,
    top,
    timeConstant,
    speedAt,
    distanceAt,
    forceAt: (speed) => Math.min(cap, standstill - perSpeed * speed),
    toSpeed: (speed) => {
      if (speed <= from) return 0
      if (speed <= knee) return (speed - from) / capped
      if (speed >= top) return Number.POSITIVE_INFINITY
      return kneeSeconds + timeConstant * Math.log((top - free) / (top - speed))
    },
    toDistance,
    toBrake: (distance, deceleration) =>
      risingRoot(
        (seconds) => distanceAt(seconds) + speedAt(seconds) ** 2 / (2 * deceleration) - distance,
        0,
        toDistance(distance),
      ),
  }
}
