import type { AirUse, PneumaticMechanism, StoredAir } from '../../documents/air.ts'
import { pneumaticMechanisms } from '../../documents/air.ts'
import type { Robot } from '../../documents/types.ts'
import { settle } from '../answer/settle.ts'
import type { CylinderInput, CylinderPivotInput, Strokes } from '../inputs.ts'
import { armOf } from '../pivot/arm.ts'
import { leverOf } from '../pivot/lever.ts'
import { areasOf } from '../pneumatic/gas.ts'

/**
 * What the cylinders of a mechanism do in so many strokes out and back, at its likely numbers. An arm uses a part of its
 * cylinder's stroke; the rest of the chamber is filled with it, as a dead volume that differs between the two sides. Where the
 * arm does not fit its cylinder, the whole stroke is taken.
 */
export function strokesOf({ calculator, input }: PneumaticMechanism, { out, back }: Omit<AirUse, 'mechanism'>) {
  return calculator === 'cylinder'
    ? ofCylinder(settle<CylinderInput<number>>(input).likely, { out, back })
    : ofArm(settle<CylinderPivotInput<number>>(input).likely, { out, back })
}

function ofCylinder(input: CylinderInput<number>, { out, back }: { out: number; back: number }): Strokes[] {
  const { cylinder, cylinders, stop, deadVolume } = input
  return [{ cylinder, stop, deadVolume, out: cylinders * out, back: cylinders * back }]
}

function ofArm(input: CylinderPivotInput<number>, { out, back }: { out: number; back: number }): Strokes[] {
  const { cylinder, cylinders, deadVolume } = input
  const arm = armOf(input)
  const { load, wrong } = leverOf(input, arm)
  if (wrong) return [{ cylinder, stop: null, deadVolume, out: cylinders * out, back: cylinders * back }]
  const { full, ring } = areasOf(cylinder)
  const used = load.at(arm.end).travel
  // How far the rod stays out at least, and how far it never comes out.
  const least = load.direction === 'extend' ? load.before : cylinder.stroke - load.before - used
  const never = Math.max(0, cylinder.stroke - least - used)
  const one = { cylinder, stop: used, out: 0, back: 0 }
  return [
    { ...one, deadVolume: deadVolume + full * Math.max(0, least), out: cylinders * out },
    { ...one, deadVolume: deadVolume + ring * never, back: cylinders * back },
  ]
}

/** The strokes of several uses; what names no pneumatic mechanism of the robot takes nothing. */
export function strokesOfUses(robot: Robot, uses: readonly AirUse[]): Strokes[] {
  const mechanisms = new Map(pneumaticMechanisms(robot).map((mechanism) => [mechanism.id, mechanism]))
  return uses.flatMap((use) => {
    const mechanism = mechanisms.get(use.mechanism)
    return mechanism ? strokesOf(mechanism, use) : []
  })
}

/** The supply's own numbers, without what uses it. */
export const supplyNumbers = ({ tank, tanks, stored, working, ambient, leak, compressor }: StoredAir) => ({
  tank,
  tanks,
  stored,
  working,
  ambient,
  leak,
  compressor,
})
