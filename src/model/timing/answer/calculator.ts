import type { Remark } from '../types.ts'

/** What a mechanism does at known numbers, or why it can not. */
export type Solved<Quantities, Curves> =
  | { possible: true; seconds: number; quantities: Quantities; curves: Curves; warnings: Remark[] }
  | { possible: false; why: Remark; quantities: Partial<Quantities>; warnings: Remark[] }

/** A calculator at known numbers; spreads and sensitivities are the same for all and come around it. */
export interface Calculator<Settled, Quantities, Curves> {
  /** Continuous numbers of the input with their units, by dotted path: those whose sensitivity is told. */
  units: { readonly [path: string]: string }
  solve(input: Settled): Solved<Quantities, Curves>
  /** The time alone, as quickly as possible; null where it is impossible. */
  seconds(input: Settled): number | null
  /** How the time varies once the mechanism is built for its likely numbers; `seconds` where not given. */
  asBuilt?(likely: Settled): (drawn: Settled) => number | null
}

/** Numbers of a motor that a time can hang on. */
export const electricUnits = {
  reduction: '',
  efficiency: '',
  voltage: 'V',
  sourceResistance: 'Ω',
  currentLimit: 'A',
  'motor.freeSpeed': 'rad/s',
  'motor.freeCurrent': 'A',
  'motor.stallTorque': 'N·m',
  'motor.stallCurrent': 'A',
  'motor.rotorInertia': 'kg·m²',
}

export const pneumaticUnits = {
  pressure: 'Pa',
  ambient: 'Pa',
  temperature: 'K',
  cylinderFriction: 'N',
  deadVolume: 'm³',
  'supply.conductance': 'm³/(s·Pa)',
  'supply.criticalRatio': '',
  'exhaust.conductance': 'm³/(s·Pa)',
  'exhaust.criticalRatio': '',
  'cylinder.bore': 'm',
  'cylinder.rod': 'm',
}
