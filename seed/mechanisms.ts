import type { Mechanism } from '../src/model/documents/mechanism.ts'
import type { Robot, Stage, Trip } from '../src/model/documents/types.ts'
import { largeMotor, slimCylinder, smallMotor, throwingWheel, valve } from './parts.ts'

const battery = { voltage: 12.4, sourceResistance: 0.015, lowestVoltage: 7 }

/** Closed until the intake comes down gently. */
const throttled = { ...valve, id: 'valve-throttled', name: 'Generic valve, throttled', conductance: 5e-10 }

/** What moves on Shearwater, of the demo's generic parts. */
export const mechanisms: Mechanism[] = [
  {
    id: 'intake-down',
    name: 'Intake, down',
    calculator: 'cylinder',
    input: {
      cylinder: slimCylinder,
      cylinders: 2,
      supply: throttled,
      exhaust: throttled,
      pressure: 501_325,
      ambient: 101_325,
      temperature: 293.15,
      cylinderFriction: { kind: 'range', low: 5, likely: 10, high: 25 },
      deadVolume: 0.00001,
      farSide: 'charged',
      direction: 'extend',
      mass: 3,
      load: { kind: 'range', low: -20, likely: -10, high: 15 },
      stop: null,
    },
  },
  {
    id: 'intake-rollers',
    name: 'Intake rollers',
    calculator: 'rollers',
    input: {
      ...battery,
      motor: smallMotor,
      motors: 1,
      reduction: 4,
      efficiency: 0.8,
      currentLimit: 30,
      rollerDiameter: 0.05,
      travel: 0.6,
      pieceMass: 0.3,
      grip: { kind: 'range', low: 2.2, likely: 3, high: 5 },
      drag: { kind: 'range', low: 0.8, likely: 1.5, high: 2.1 },
      slip: 0.1,
      driveSpeed: 2,
    },
  },
  {
    id: 'arm-up',
    name: 'Arm, up to the gantry',
    calculator: 'pivot',
    input: {
      by: 'motor',
      ...battery,
      motor: largeMotor,
      motors: 1,
      reduction: 420,
      efficiency: { kind: 'range', low: 0.55, likely: 0.65, high: 0.75 },
      currentLimit: 40,
      inertia: 3.2,
      mass: { kind: 'range', low: 5.6, likely: 6, high: 6.6 },
      centre: 0.65,
      from: -1,
      to: 1.3,
      friction: 2,
      stops: { low: -1.1, high: 1.45 },
      end: 'brake',
    },
  },
  {
    id: 'throwing-wheel',
    name: 'Throwing wheel',
    calculator: 'wheel',
    input: {
      ...battery,
      motor: largeMotor,
      motors: 1,
      reduction: 1.2,
      efficiency: 0.9,
      currentLimit: 40,
      stage: 'spinUp',
      inertia: 2 * throwingWheel.inertia,
      drag: { kind: 'range', low: 0.03, likely: 0.06, high: 0.1 },
      wheelDiameter: throwingWheel.diameter,
      from: 0,
      target: 400,
      shot: { pieceMass: 0.3, exitSpeed: 9, transfer: 0.5 },
    },
  },
]

/** Which stage names which of them, by the stage's own id. */
const of: { readonly [trip: string]: { readonly [stage: string]: string } } = {
  collect: { lower: 'intake-down', 'draw-in': 'intake-rollers' },
  gantry: { raise: 'arm-up', 'spin-up': 'throwing-wheel' },
}

/**
 * The robot with its mechanisms beside its own times: drivers, hooks and fingers make a stage take longer than its hardware
 * alone, so that nothing follows, and the difference is shown.
 */
export function withMechanisms(robot: Robot): Robot {
  const link = <T extends Trip>(trip: T, by: { readonly [stage: string]: string }): T => {
    if (!('stages' in trip)) return trip
    const stages = trip.stages.map((stage): Stage => {
      const mechanism = by[stage.id]
      return mechanism ? { ...stage, hardware: { mechanism, follows: false } } : stage
    })
    return { ...trip, stages }
  }
  const collect = Object.entries(robot.collect).map(([id, trip]) => [id, link(trip, of['collect']!)])
  return {
    ...robot,
    collect: Object.fromEntries(collect),
    score: { ...robot.score, gantry: (robot.score['gantry'] ?? []).map((entry) => link(entry, of['gantry']!)) },
    mechanisms,
  }
}
