import type { Part } from '../../../src/model/timing/parts.ts'
import {
  airFlow,
  conductance,
  current,
  inertia,
  partLength,
  pressure,
  rotation,
  torque,
  voltage,
  volume,
} from '../../units/measures.ts'
import type { Measured } from '../../units/quantities.ts'

export type PartKind = Part['kind']

export type PartOf<Kind extends PartKind> = Extract<Part, { kind: Kind }>

/** In the order of the shelf: what turns, what pushes, what stores, what rolls. */
export const partKinds = [
  'motor',
  'cylinder',
  'valve',
  'compressor',
  'tank',
  'wheel',
] as const satisfies readonly PartKind[]

/** A number of a part, with the limits that its contract has (SI). */
export interface PartNumber {
  key: string
  quantity?: Measured
  min?: number
  above?: number
  max: number
  /** May be missing. */
  optional?: boolean
  /** The heading in a file without its unit. */
  column: string
}

/** Highest pressure that any part may be given (Pa, absolute). */
const highest = 2_000_000

/** The numbers of each kind, in the order of its form, its table and its file. */
export const numbersOf: { readonly [Kind in PartKind]: readonly PartNumber[] } = {
  motor: [
    { key: 'nominalVoltage', quantity: voltage, min: 1, max: 100, column: 'nominal_voltage' },
    { key: 'freeSpeed', quantity: rotation, min: 1, max: 10_000, column: 'free_speed' },
    { key: 'freeCurrent', quantity: current, min: 0, max: 1000, column: 'free_current' },
    { key: 'stallTorque', quantity: torque, min: 0.001, max: 1000, column: 'stall_torque' },
    { key: 'stallCurrent', quantity: current, min: 0.01, max: 5000, column: 'stall_current' },
    { key: 'rotorInertia', quantity: inertia, min: 0, max: 1, optional: true, column: 'rotor_inertia' },
  ],
  cylinder: [
    { key: 'bore', quantity: partLength, min: 0.002, max: 0.5, column: 'bore' },
    { key: 'rod', quantity: partLength, min: 0.0005, max: 0.45, column: 'rod' },
    { key: 'stroke', quantity: partLength, min: 0.001, max: 3, column: 'stroke' },
  ],
  valve: [
    { key: 'conductance', quantity: conductance, min: 1e-11, max: 1e-6, column: 'conductance' },
    { key: 'criticalRatio', min: 0.01, max: 0.99, column: 'critical_ratio' },
  ],
  compressor: [],
  tank: [
    { key: 'volume', quantity: volume, min: 1e-6, max: 1, column: 'volume' },
    { key: 'highestPressure', quantity: pressure, above: 0, max: highest, column: 'highest_pressure' },
  ],
  wheel: [
    { key: 'diameter', quantity: partLength, min: 0.005, max: 1, column: 'diameter' },
    { key: 'mass', quantity: 'mass', min: 0, max: 50, column: 'mass' },
    { key: 'inertia', quantity: inertia, min: 0, max: 10, column: 'inertia' },
    { key: 'friction', min: 0, max: 3, column: 'friction' },
  ],
}

/** The two numbers of a point of a compressor's flow, and how many points there may be. */
export const flowPoint = {
  pressure: { quantity: pressure, min: 0, max: highest },
  flow: { quantity: airFlow, min: 0, max: 1 },
  least: 2,
  most: 50,
} as const
