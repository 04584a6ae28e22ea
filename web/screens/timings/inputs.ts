import type { Mechanism } from '../../../src/model/documents/mechanism.ts'
import { current, inertia, partLength, pressure, rotation, torque, voltage, volume } from '../../units/measures.ts'
import { angle, density, force, resistance, temperature } from '../../units/mechanics.ts'
import type { Measured } from '../../units/quantities.ts'
import type { PartKind } from '../parts/numbers.ts'

/** A number of a calculator's input, with the limits that its contract has (SI). */
export interface InputNumber {
  /** Dotted path in the input; its label has the same name. */
  key: string
  quantity?: Measured
  percent?: true
  whole?: true
  min: number
  max: number
  /** May be given as low, likely and high, or as median and spread. */
  uncertain?: true
  /** May be left out; what it begins with otherwise (SI). */
  fresh?: number
}

/** What a form asks for: a number, a part of the shelf, one of a few words, or yes and no. */
export type Field =
  | ({ kind: 'number' } & InputNumber)
  | { kind: 'part'; key: string; part: PartKind }
  | { kind: 'choice'; key: string; of: readonly string[] }
  | { kind: 'yesNo'; key: string }
  /** A part of the input that may be missing, with what it begins with. */
  | { kind: 'present'; key: string; fresh: object }
  /** The game's legs that a drive's numbers are fitted to. */
  | { kind: 'legs' }

export type GroupName = 'motors' | 'cylinders' | 'moves' | 'reach' | 'shot' | 'supply' | 'air'

export interface Group {
  name: GroupName
  fields: readonly Field[]
  /** Rarely changed: folded at first. */
  folded?: true
}

type Limits = Omit<InputNumber, 'key' | 'min' | 'max' | 'uncertain'>

const exact = (key: string, [min, max]: readonly [number, number], rest: Limits = {}): Field => ({
  kind: 'number',
  key,
  min,
  max,
  ...rest,
})
const open = (key: string, limits: readonly [number, number], rest: Limits = {}): Field => ({
  ...(exact(key, limits, rest) as Field & { kind: 'number' }),
  uncertain: true,
})

/** Angles: up to a turn and a half to either side (rad). */
const turns = [-9.5, 9.5] as const
/** Highest pressure anywhere (Pa, absolute). */
const highest = 2_000_000

const motors: Group = {
  name: 'motors',
  fields: [
    { kind: 'part', key: 'motor', part: 'motor' },
    exact('motors', [1, 16], { whole: true }),
    open('reduction', [0.05, 5000]),
    open('efficiency', [0.05, 1], { percent: true }),
    exact('currentLimit', [1, 1000], { quantity: current, fresh: 40 }),
  ],
}
const supply: Group = {
  name: 'supply',
  folded: true,
  fields: [
    open('voltage', [1, 100], { quantity: voltage }),
    open('sourceResistance', [0, 10], { quantity: resistance }),
    exact('lowestVoltage', [0, 100], { quantity: voltage, fresh: 7 }),
  ],
}
const cylinders: Group = {
  name: 'cylinders',
  fields: [
    { kind: 'part', key: 'cylinder', part: 'cylinder' },
    exact('cylinders', [1, 16], { whole: true }),
    open('pressure', [100_000, highest], { quantity: pressure }),
    { kind: 'part', key: 'supply', part: 'valve' },
    { kind: 'part', key: 'exhaust', part: 'valve' },
  ],
}
const air: Group = {
  name: 'air',
  folded: true,
  fields: [
    { kind: 'choice', key: 'farSide', of: ['charged', 'vented'] },
    open('cylinderFriction', [0, 5000], { quantity: force }),
    open('deadVolume', [1e-7, 0.01], { quantity: volume }),
    open('ambient', [50_000, 110_000], { quantity: pressure }),
    open('temperature', [250, 330], { quantity: temperature }),
  ],
}
const swing: readonly Field[] = [
  open('from', turns, { quantity: angle }),
  open('to', turns, { quantity: angle }),
  open('mass', [0.001, 500], { quantity: 'mass' }),
  open('centre', [0, 5], { quantity: 'length' }),
  open('inertia', [1e-6, 1000], { quantity: inertia }),
  open('friction', [0, 5000], { quantity: torque }),
  { kind: 'present', key: 'stops', fresh: { low: -1, high: 2 } },
  exact('stops.low', turns, { quantity: angle }),
  exact('stops.high', turns, { quantity: angle }),
]

/** Kinds of mechanisms as people tell them apart; a calculator may serve two. */
export type MechanismKind =
  | 'rollers'
  | 'motorArm'
  | 'cylinderArm'
  | 'spinUp'
  | 'recovery'
  | 'shot'
  | 'cylinder'
  | 'drive'

const wheel: readonly Group[] = [
  motors,
  {
    name: 'moves',
    fields: [
      { kind: 'choice', key: 'stage', of: ['spinUp', 'recovery'] },
      open('wheelDiameter', [0.005, 2], { quantity: partLength }),
      open('inertia', [1e-7, 100], { quantity: inertia }),
      open('target', [0.1, 10_000], { quantity: rotation }),
      open('from', [0, 10_000], { quantity: rotation }),
      open('drag', [0, 1000], { quantity: torque }),
    ],
  },
  {
    name: 'shot',
    fields: [
      { kind: 'present', key: 'shot', fresh: { pieceMass: 0.25, exitSpeed: 9, transfer: 0.5 } },
      open('shot.pieceMass', [0.001, 20], { quantity: 'mass' }),
      open('shot.exitSpeed', [0.01, 100], { quantity: 'speed' }),
      open('shot.transfer', [0.05, 1], { percent: true }),
    ],
  },
  supply,
]

/** The form of each kind, in its order; everything that the calculator is given stands in it. */
export const formOf: { readonly [Kind in MechanismKind]: readonly Group[] } = {
  drive: [
    motors,
    {
      name: 'moves',
      fields: [
        open('wheelDiameter', [0.01, 1], { quantity: partLength }),
        open('mass', [0.5, 1000], { quantity: 'mass' }),
        open('friction', [0.02, 3]),
        open('drivenShare', [0.05, 1], { percent: true }),
        open('rollingResistance', [0, 2000], { quantity: force }),
        exact('brakingLimit', [0.05, 100], { quantity: 'acceleration', fresh: 5 }),
        open('distance', [0.01, 200], { quantity: 'length' }),
        { kind: 'yesNo', key: 'stops' },
        { kind: 'legs' },
      ],
    },
    supply,
  ],
  rollers: [
    motors,
    {
      name: 'moves',
      fields: [
        open('rollerDiameter', [0.005, 0.5], { quantity: partLength }),
        open('travel', [0.005, 5], { quantity: 'length' }),
        open('pieceMass', [0.001, 20], { quantity: 'mass' }),
        open('grip', [0.01, 2000], { quantity: force }),
        open('drag', [0, 2000], { quantity: force }),
        open('slip', [0, 0.9], { percent: true }),
        open('driveSpeed', [0, 20], { quantity: 'speed' }),
      ],
    },
    supply,
  ],
  motorArm: [
    motors,
    { name: 'moves', fields: [...swing, { kind: 'choice', key: 'end', of: ['brake', 'stop'] }] },
    supply,
  ],
  cylinderArm: [
    cylinders,
    { name: 'moves', fields: swing },
    {
      name: 'reach',
      fields: [
        exact('frame.0', [-5, 5], { quantity: partLength }),
        exact('frame.1', [-5, 5], { quantity: partLength }),
        open('radius', [0.005, 3], { quantity: partLength }),
        open('offset', turns, { quantity: angle }),
        open('closedLength', [0.005, 5], { quantity: partLength }),
      ],
    },
    air,
  ],
  spinUp: wheel,
  recovery: wheel,
  shot: [
    {
      name: 'shot',
      fields: [
        open('distance', [0.02, 60], { quantity: 'length' }),
        open('releaseHeight', [0, 10], { quantity: 'length' }),
        open('angle', [-1.5, 1.55], { quantity: angle }),
        open('targetHeight', [0, 20], { quantity: 'length' }),
        { kind: 'present', key: 'opening', fresh: { size: 0.6, lies: 'upright' } },
        exact('opening.size', [0.005, 10], { quantity: 'length' }),
        { kind: 'choice', key: 'opening.lies', of: ['upright', 'level'] },
        exact('speedError', [0, 0.5], { percent: true }),
        exact('angleError', [0, 0.5], { quantity: angle }),
      ],
    },
    {
      name: 'moves',
      fields: [
        open('wheelDiameter', [0.005, 2], { quantity: partLength }),
        open('transfer', [0.05, 1.5]),
        open('exitSpeed', [0.1, 100], { quantity: 'speed', fresh: 9 }),
        open('pieceMass', [0.001, 20], { quantity: 'mass' }),
        open('pieceDiameter', [0.005, 2], { quantity: 'length' }),
      ],
    },
    {
      name: 'air',
      folded: true,
      fields: [open('dragCoefficient', [0, 3]), open('airDensity', [0, 2], { quantity: density })],
    },
  ],
  cylinder: [
    cylinders,
    {
      name: 'moves',
      fields: [
        { kind: 'choice', key: 'direction', of: ['extend', 'retract'] },
        open('mass', [0.001, 500], { quantity: 'mass' }),
        open('load', [-20_000, 20_000], { quantity: force }),
        open('stop', [0.001, 3], { quantity: partLength, fresh: 0.1 }),
      ],
    },
    air,
  ],
}

export const mechanismKinds = Object.keys(formOf) as MechanismKind[]

/** The kind that a mechanism is. */
export function kindOf({ calculator, input }: Mechanism): MechanismKind {
  if (calculator === 'pivot') return input.by === 'motor' ? 'motorArm' : 'cylinderArm'
  return calculator === 'wheel' ? input.stage : calculator
}

/** All numbers of a kind's form. */
export const numbersIn = (kind: MechanismKind): InputNumber[] =>
  formOf[kind].flatMap(({ fields }) => fields.filter((field) => field.kind === 'number'))
