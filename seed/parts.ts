import type { Compressor, Cylinder, Motor, Part, Tank, Valve, Wheel } from '../src/model/timing/parts.ts'

const invented = { source: 'Invented for the demo season, in round numbers', date: '2026-11-26' }

/** Parts that nobody sells: round numbers of the size that such parts have. Take your own from their data sheets. */
export const largeMotor: Motor = {
  kind: 'motor',
  id: 'motor-large',
  name: 'Generic motor, large',
  ...invented,
  nominalVoltage: 12,
  freeSpeed: 600,
  freeCurrent: 2,
  stallTorque: 2.3,
  stallCurrent: 120,
  rotorInertia: 0.00004,
}

export const smallMotor: Motor = {
  kind: 'motor',
  id: 'motor-small',
  name: 'Generic motor, small',
  ...invented,
  nominalVoltage: 12,
  freeSpeed: 1000,
  freeCurrent: 1,
  stallTorque: 0.55,
  stallCurrent: 50,
  rotorInertia: 0.00001,
}

export const wideCylinder: Cylinder = {
  kind: 'cylinder',
  id: 'cylinder-40',
  name: 'Generic cylinder, 40 mm bore, 200 mm stroke',
  ...invented,
  bore: 0.04,
  rod: 0.016,
  stroke: 0.2,
}

export const slimCylinder: Cylinder = {
  kind: 'cylinder',
  id: 'cylinder-20',
  name: 'Generic cylinder, 20 mm bore, 100 mm stroke',
  ...invented,
  bore: 0.02,
  rod: 0.008,
  stroke: 0.1,
}

export const valve: Valve = {
  kind: 'valve',
  id: 'valve-1',
  name: 'Generic valve with its fittings',
  ...invented,
  conductance: 1e-8,
  criticalRatio: 0.3,
}

export const compressor: Compressor = {
  kind: 'compressor',
  id: 'compressor-small',
  name: 'Generic compressor',
  ...invented,
  flow: [
    [100_000, 0.0005],
    [400_000, 0.0003],
    [1_000_000, 0.0001],
  ],
}

export const tank: Tank = {
  kind: 'tank',
  id: 'tank-06',
  name: 'Generic tank, 0.6 litres',
  ...invented,
  volume: 0.0006,
  highestPressure: 1_000_000,
}

export const driveWheel: Wheel = {
  kind: 'wheel',
  id: 'wheel-100',
  name: 'Generic wheel, 100 mm',
  ...invented,
  diameter: 0.1,
  mass: 0.2,
  inertia: 0.0003,
  friction: 1.1,
}

export const throwingWheel: Wheel = {
  kind: 'wheel',
  id: 'wheel-150',
  name: 'Generic throwing wheel, 150 mm',
  ...invented,
  diameter: 0.15,
  mass: 0.8,
  inertia: 0.0025,
  friction: 1,
}

export const parts: Part[] = [
  largeMotor,
  smallMotor,
  wideCylinder,
  slimCylinder,
  valve,
  compressor,
  tank,
  driveWheel,
  throwingWheel,
]
