import type { Solved } from '../answer/calculator.ts'
import { remark } from '../answer/remark.ts'
import type { PivotCurves, PivotQuantities } from '../answers.ts'
import type { CylinderPivotInput } from '../inputs.ts'
import { drawnPoints, evenly } from '../numerics/trace.ts'
import { areasOf, freeAirOf } from '../pneumatic/gas.ts'
import { drawn, fullForce, type Load, rate, stroke } from '../pneumatic/stroke.ts'
import type { Remark } from '../types.ts'
import { type Arm, armOf, arrivalWarning, wayForbidden } from './arm.ts'
import { leverOf } from './lever.ts'

type Input = CylinderPivotInput<number>

export function cylinderSeconds(input: Input): number | null {
  const arm = armOf(input)
  const { load, why } = looked(input, arm)
  return why ? null : (stroke(input, load, 1e-4)?.seconds ?? null)
}

export function solveCylinder(input: Input): Solved<PivotQuantities, PivotCurves> {
  const arm = armOf(input)
  const { load, why } = looked(input, arm)
  const known = { gravityTorque: arm.greatest(), ...electricNothing }
  if (why) return { possible: false, why, quantities: known, warnings: [] }
  const done = stroke(input, load, 1e-8, true)
  if (!done) {
    const stuck = remark('neverArrives', 'The arm stays where it is: it does not arrive within the longest time')
    return { possible: false, why: stuck, quantities: known, warnings: [] }
  }
  const points = drawn(done, drawnPoints)
  const endSpeed = done.state[rate]!
  const endEnergy = (input.inertia * endSpeed ** 2) / 2
  return {
    possible: true,
    seconds: done.seconds,
    quantities: {
      ...known,
      startTorque: torqueAt(input, load, 0),
      peakSpeed: done.peak,
      endSpeed,
      endEnergy,
      strokeUsed: load.at(arm.end).travel,
      freeAir: freeAir(input, load, arm),
    },
    curves: {
      time: points.time,
      angle: points.coordinate.map(arm.angleAt),
      speed: points.rate.map((speed) => arm.sign * speed),
      current: [],
      pressure: points.push,
      backPressure: points.back,
    },
    warnings: arrivalWarning(input, endEnergy),
  }
}

const electricNothing = {
  brakingFrom: null,
  motorCurrent: null,
  holdingCurrent: null,
  sourceCurrent: null,
  sourceVoltage: null,
}

/** At full pressure, friction of the cylinders not taken off (N·m). */
const torqueAt = (input: Input, load: Load, turned: number): number =>
  (fullForce(input, load.direction) + input.cylinders * input.cylinderFriction) * load.at(turned).slope

/** The chamber that pushes is full at the end; before, it had the room's pressure. */
function freeAir(input: Input, load: Load, arm: Arm): number {
  const { full, ring } = areasOf(input.cylinder)
  const area = load.direction === 'extend' ? full : ring
  const { pressure, ambient, deadVolume, cylinders } = input
  const end = deadVolume + area * (load.before + load.at(arm.end).travel)
  return cylinders * (freeAirOf(end, { pressure, ambient }) - deadVolume - area * load.before)
}

function looked(input: Input, arm: Arm): { load: Load; why: Remark | null } {
  const { load, wrong } = leverOf(input, arm)
  return { load, why: wayForbidden(input) ?? wrong ?? tooWeak(input, load, arm) }
}

function tooWeak(input: Input, load: Load, arm: Arm): Remark | null {
  const force = fullForce(input, load.direction)
  for (const turned of evenly(0, arm.end, 17)) {
    const { slope, resistance: needed } = load.at(turned)
    const torque = force * slope
    if (torque > needed) continue
    const text = 'At {angle} rad the cylinders turn with {torque} N·m, and gravity and friction need {needed} N·m'
    return remark('tooWeakToTurn', text, { angle: arm.angleAt(turned), torque, needed })
  }
  return null
}
