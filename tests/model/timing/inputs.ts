import * as parts from '../../../seed/parts.ts'
import type * as timing from '../../../src/model/timing/index.ts'

/** One ordinary mechanism for each calculator, of the demo's generic parts, with some of its numbers uncertain. */

const electric = {
  motor: parts.largeMotor,
  motors: 1,
  efficiency: 0.85,
  currentLimit: 40,
  voltage: 12.4,
  sourceResistance: 0.015,
  lowestVoltage: 7,
}

export const driveInput: timing.DriveInput = {
  ...electric,
  motors: 4,
  reduction: 7,
  currentLimit: 60,
  efficiency: { kind: 'range', low: 0.75, likely: 0.85, high: 0.92, of: 'level' },
  voltage: { kind: 'range', low: 11.6, likely: 12.4, high: 12.9 },
  wheelDiameter: 0.1,
  mass: 55,
  friction: { kind: 'range', low: 0.8, likely: 1, high: 1.2 },
  drivenShare: 1,
  rollingResistance: 15,
  brakingLimit: 5,
  distance: 5,
  stops: true,
}

export const rollersInput: timing.RollersInput = {
  ...electric,
  motor: parts.smallMotor,
  reduction: 4,
  currentLimit: 30,
  rollerDiameter: 0.05,
  travel: 0.6,
  pieceMass: 0.3,
  grip: { kind: 'range', low: 6, likely: 10, high: 15 },
  drag: { kind: 'lognormal', median: 2, spread: 1.3 },
  slip: 0.1,
  driveSpeed: 3,
}

const swing = {
  inertia: 0.9,
  mass: 4,
  centre: 0.4,
  from: -0.6,
  to: 1.1,
  friction: 0.5,
  stops: { low: -0.7, high: 1.3 },
}

export const motorPivotInput: timing.MotorPivotInput = {
  ...electric,
  ...swing,
  by: 'motor',
  reduction: 80,
  efficiency: { kind: 'range', low: 0.6, likely: 0.7, high: 0.8 },
  mass: { kind: 'range', low: 3.8, likely: 4, high: 4.6 },
  end: 'brake',
}

const pneumatic = {
  cylinder: parts.wideCylinder,
  cylinders: 1,
  supply: parts.valve,
  exhaust: parts.valve,
  pressure: 501_325,
  ambient: 101_325,
  temperature: 293.15,
  cylinderFriction: { kind: 'range', low: 10, likely: 20, high: 40 } as const,
  deadVolume: 0.00001,
  farSide: 'charged' as const,
}

export const cylinderPivotInput: timing.CylinderPivotInput = {
  ...pneumatic,
  ...swing,
  by: 'cylinder',
  frame: [0.1, -0.35],
  radius: 0.12,
  offset: 0,
  closedLength: 0.27,
}

export const wheelInput: timing.WheelInput = {
  ...electric,
  reduction: 1,
  stage: 'spinUp',
  inertia: { kind: 'range', low: 0.0024, likely: 0.0025, high: 0.0028, of: 'level' },
  drag: { kind: 'range', low: 0.02, likely: 0.05, high: 0.1 },
  wheelDiameter: 0.15,
  from: 0,
  target: 400,
  shot: { pieceMass: 0.25, exitSpeed: 9, transfer: 0.5 },
}

export const shotInput: timing.ShotInput = {
  releaseHeight: 0.8,
  angle: 0.96,
  targetHeight: 2.4,
  distance: { kind: 'range', low: 2.8, likely: 3, high: 3.3 },
  pieceMass: 0.25,
  pieceDiameter: 0.18,
  dragCoefficient: 0.47,
  airDensity: 1.2,
  wheelDiameter: 0.15,
  transfer: 0.5,
  exitSpeed: null,
  opening: { size: 0.6, lies: 'upright' },
  speedError: 0.02,
  angleError: 0.01,
}

export const cylinderInput: timing.CylinderInput = {
  ...pneumatic,
  direction: 'extend',
  mass: 6,
  load: { kind: 'range', low: 40, likely: 60, high: 90 },
  stop: null,
}

export const airInput: timing.AirInput = {
  tank: parts.tank,
  tanks: 3,
  stored: 900_000,
  working: 501_325,
  ambient: 101_325,
  strokes: [{ cylinder: parts.wideCylinder, stop: null, deadVolume: 0.00001, out: 1, back: 1 }],
  leak: { kind: 'range', low: 0, likely: 0.000005, high: 0.00002 },
  compressor: { part: parts.compressor, on: 800_000, off: 900_000 },
  cycleSeconds: 12,
  matchSeconds: 150,
}

export const examples: [timing.CalculatorName, timing.Inputs[timing.CalculatorName]][] = [
  ['drive', driveInput],
  ['rollers', rollersInput],
  ['pivot', motorPivotInput],
  ['pivot', cylinderPivotInput],
  ['wheel', wheelInput],
  ['wheel', { ...wheelInput, stage: 'recovery' }],
  ['shot', shotInput],
  ['cylinder', cylinderInput],
  ['air', airInput],
]
