import type { PneumaticMechanism } from '../../../../src/model/documents/air.ts'
import type { Uncertain } from '../../../../src/model/timing/types.ts'

/** Pressure before the valves of a mechanism at its likely value (Pa). */
export function pressureOf({ input }: PneumaticMechanism): number {
  const { pressure } = input as { pressure: Uncertain }
  return typeof pressure === 'number' ? pressure : pressure.kind === 'range' ? pressure.likely : pressure.median
}
