import type { Inputs } from '../timing/inputs.ts'

/** Calculators that give a stage its seconds; the air budget is about the whole match. */
export type MechanismCalculator = Exclude<keyof Inputs, 'air'>

/**
 * A mechanism of a robot whose time comes from its hardware (model, section 7). The input holds copies of parts, so that a
 * design means the same when the shelf changes.
 */
export type Mechanism<Name extends MechanismCalculator = MechanismCalculator> = {
  [Each in Name]: { id: string; name: string; calculator: Each; input: Inputs[Each] }
}[Name]

/** Where the numbers of a stage or of the drive come from. */
export interface HardwareLink {
  /** Id of the robot's mechanism. */
  mechanism: string
  /** Whether the numbers follow the mechanism; if not they are the person's own, and the mechanism stands beside them. */
  follows: boolean
}
