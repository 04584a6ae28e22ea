import { remark } from '../answer/remark.ts'
import type { Circuit } from '../electric/circuit.ts'
import type { MotorPivotInput } from '../inputs.ts'
import { integrate } from '../numerics/integrate.ts'
import { evenly, type Trace } from '../numerics/trace.ts'
import type { Remark } from '../types.ts'
import type { Arm } from './arm.ts'

/** How motors turn an arm: at full torque, and if it has to stand, from some place on against it. */
export interface Turn {
  seconds: number
  drivingSeconds: number
  /** How far it has turned when braking begins (rad); null where it does not. */
  brakingFrom: number | null
  /** Speeds at that moment, and at the end (rad/s). */
  peak: number
  endSpeed: number
  driving: Trace
  /** Runs backwards from the end. */
  braking: Trace | null
}

interface Setting {
  input: MotorPivotInput<number>
  arm: Arm
  circuit: Circuit
  inertia: number
}

const longest = 600

/**
 * The quickest turn: full torque up to the one place from which the same torque against the movement just stops it at the
 * end. That place is where the kinetic energy meets what brake, friction and gravity take away on the rest of the way, which
 * is known in closed form; the time of braking is found backwards from the end, where the motion starts from rest.
 */
export function turnOf({ input, arm, circuit, inertia }: Setting, tolerance: number, keep = false): Turn | Remark {
  const { friction } = input
  const limit = Math.min(circuit.limit, circuit.standstill)
  const torqueAt = (speed: number) => Math.min(circuit.limit, circuit.standstill - circuit.perSpeed * speed)
  const start = arm.gravityAt(0) + friction
  if (limit <= start) {
    const text = 'It does not start: the motors turn with {torque} N·m at most, gravity and friction with {needed} N·m'
    return remark('tooWeakToLift', text, { torque: limit, needed: start })
  }
  const brakes = input.end === 'brake'
  const energyLeft = (turned: number) => (limit + friction) * (arm.end - turned) + arm.liftBetween(turned, arm.end)
  if (brakes && limit + friction <= arm.weight) {
    const weakest = Math.min(...evenly(0, arm.end, 101).slice(0, -1).map(energyLeft))
    if (weakest <= 0) {
      const text = 'It can not be stopped: gravity pulls with up to {gravity} N·m and the brake holds {torque} N·m'
      return remark('tooWeakToStop', text, { gravity: arm.greatest(), torque: limit + friction })
    }
  }
  const driving = integrate({
    rates: (at, rates) => {
      rates[0] = at[1]!
      rates[1] = (torqueAt(at[1]!) - friction - arm.gravityAt(at[0]!)) / inertia
    },
    from: [0, 0],
    until: [(at) => (brakes ? (inertia * at[1]! ** 2) / 2 - energyLeft(at[0]!) : at[0]! - arm.end), (at) => -at[1]!],
    longest,
    tolerance,
    scale: [arm.end * 1e-3, arm.end * 1e-1],
    keep,
  })
  const [turned, speed] = driving.state as unknown as [number, number]
  if (driving.event !== 0) {
    const text = 'It stalls at {angle} rad: gravity and friction need {needed} N·m there, the motors give {torque} N·m'
    const needed = arm.gravityAt(turned) + friction
    return remark('stalls', text, { angle: arm.angleAt(turned), needed, torque: limit })
  }
  if (!brakes) {
    const { seconds, trace } = driving
    return {
      seconds,
      drivingSeconds: seconds,
      brakingFrom: null,
      peak: speed,
      endSpeed: speed,
      driving: trace,
      braking: null,
    }
  }
  const braking = integrate({
    rates: (at, rates) => {
      rates[0] = at[1]!
      rates[1] = (limit + friction + arm.gravityAt(arm.end - at[0]!)) / inertia
    },
    from: [0, 0],
    until: [(at) => at[0]! - (arm.end - turned)],
    longest,
    tolerance,
    scale: [arm.end * 1e-3, arm.end * 1e-1],
    keep,
  })
  return {
    seconds: driving.seconds + braking.seconds,
    drivingSeconds: driving.seconds,
    brakingFrom: turned,
    peak: speed,
    endSpeed: 0,
    driving: driving.trace,
    braking: braking.trace,
  }
}
