import { remark } from '../answer/remark.ts'
import { type Circuit, circuitOf } from '../electric/circuit.ts'
import { type Run, run } from '../electric/launch.ts'
import { gravity } from '../gravity.ts'
import type { DriveInput } from '../inputs.ts'
import type { Remark } from '../types.ts'

/** A robot on its wheels: how it runs from rest, and how it brakes. */
export interface Chassis {
  circuit: Circuit
  radius: number
  motion: Run
  /** At the start (m/s²), and what limits it. */
  acceleration: number
  limitedBy: 'traction' | 'currentLimit' | 'motor'
  deceleration: number
  tractionForce: number
  launchForce: number
  /** Why it can not move; null: it can. */
  stuck: Remark | null
}

export function chassisOf(input: DriveInput<number>): Chassis {
  const { mass, friction, drivenShare, rollingResistance: resistance, brakingLimit } = input
  const circuit = circuitOf(input)
  const radius = input.wheelDiameter / 2
  const tractionForce = friction * drivenShare * mass * gravity
  // The tyres push the robot alone; the rotors take their share of the motors' force before it comes to them.
  const moved = mass + circuit.rotors / radius ** 2
  const atGrip = (moved / mass) * (tractionForce - resistance) + resistance
  const limit = circuit.limit / radius
  const standstill = circuit.standstill / radius
  const cap = Math.min(limit, atGrip)
  const launchForce = Math.min(limit, standstill)
  const push = Math.min(cap, standstill)
  return {
    circuit,
    radius,
    motion: run({ mass: moved, cap, standstill, perSpeed: circuit.perSpeed / radius ** 2, resistance, from: 0 }),
    acceleration: (push - resistance) / moved,
    limitedBy: standstill <= cap ? 'motor' : atGrip < limit ? 'traction' : 'currentLimit',
    deceleration: Math.min(tractionForce / mass, brakingLimit ?? Number.POSITIVE_INFINITY),
    tractionForce,
    launchForce,
    stuck: whyStuck({ tractionForce, launchForce, resistance }),
  }
}

function whyStuck(forces: { tractionForce: number; launchForce: number; resistance: number }): Remark | null {
  const { tractionForce, launchForce, resistance } = forces
  if (launchForce <= Math.max(0, resistance)) {
    const text = 'The motors push with {force} N at most, which does not overcome the resistance of {resistance} N'
    return remark('tooWeakToMove', text, { force: launchForce, resistance })
  }
  if (tractionForce > resistance) return null
  const text = 'The tyres hold {force} N at most, which does not overcome the resistance of {resistance} N'
  return remark('wheelsOnlySpin', text, { force: tractionForce, resistance })
}
