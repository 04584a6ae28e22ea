import type { Mechanism } from '../../../src/model/documents/mechanism.ts'
import type { Game, Robot } from '../../../src/model/documents/types.ts'
import type { DriveInput, Motor, Part } from '../../../src/model/timing/index.ts'
import { mechanismAnswer } from '../../../src/model/timing/index.ts'
import { words } from '../../words/catalogue.ts'
import { firstPart } from '../parts/firstPart.ts'
import type { PartKind, PartOf } from '../parts/numbers.ts'
import type { MechanismKind } from './inputs.ts'

/** What a new mechanism's numbers are taken from. */
export interface Around {
  game: Game
  robot: Robot
  /** The parts shelf; where it has none of a kind, round numbers stand in. */
  shelf: readonly Part[]
  /** The game's legs for this robot (m), where they could be found. */
  legs: DriveInput['legs']
  /** Today, for parts that are made up: year-month-day. */
  today: string
}

/** The part of a kind with the most, or the least, of something. */
function pick<Kind extends PartKind>(around: Around, kind: Kind, size: (part: PartOf<Kind>) => number): PartOf<Kind> {
  const all = around.shelf.filter((part): part is PartOf<Kind> => part.kind === kind)
  const [first] = all.toSorted((a, b) => size(b) - size(a))
  const name = words().parts.kinds[kind]
  return first ?? (firstPart(kind, { id: kind, name, date: around.today }) as PartOf<Kind>)
}

const power = ({ freeSpeed, stallTorque }: Motor) => (freeSpeed * stallTorque) / 4

/** Two digits: nobody chooses a reduction more finely than the gears that there are. */
const roughly = (value: number) => Number(value.toPrecision(2))

const atmosphere = 101_325

const electric = (motor: Motor, motors: number, currentLimit: number) => ({
  motor,
  motors,
  efficiency: 0.85,
  currentLimit,
  voltage: 12.4,
  sourceResistance: 0.015,
  lowestVoltage: 7,
})

const pneumatic = (around: Around) => {
  const valve = pick(around, 'valve', ({ conductance }) => conductance)
  return {
    cylinder: pick(around, 'cylinder', ({ bore }) => bore),
    cylinders: 1,
    supply: valve,
    exhaust: valve,
    pressure: atmosphere + 400_000,
    ambient: atmosphere,
    temperature: 293.15,
    cylinderFriction: { kind: 'range', low: 10, likely: 20, high: 40 } as const,
    deadVolume: 0.00001,
    farSide: 'charged' as const,
  }
}

const swing = { inertia: 0.9, mass: 4, centre: 0.4, from: -0.6, to: 1.1, friction: 0.5, stops: null }
const gravity = 9.81

type Unnamed<Each = Mechanism> = Each extends Mechanism ? Omit<Each, 'id' | 'name'> : never

const makers: { readonly [Kind in MechanismKind]: (around: Around) => Unnamed } = {
  drive: (around) => {
    const { game, robot, legs } = around
    const motor = pick(around, 'motor', power)
    const wheel = pick(around, 'wheel', ({ friction }) => friction)
    const free = (motor.freeSpeed * wheel.diameter) / 2
    const lengths = legs ?? []
    return {
      calculator: 'drive',
      input: {
        ...electric(motor, 4, 60),
        // So that it comes near the speed that the robot was drawn with.
        reduction: roughly((0.9 * free) / robot.drive.topSpeed),
        wheelDiameter: wheel.diameter,
        mass: robot.budget?.mass ?? game.limits?.mass ?? 50,
        friction: wheel.friction > 0.02 ? wheel.friction : 1,
        drivenShare: 1,
        rollingResistance: 15,
        brakingLimit: Math.max(0.05, robot.drive.deceleration),
        distance: lengths.length > 0 ? lengths.reduce((sum, { length }) => sum + length, 0) / lengths.length : 5,
        stops: true,
        ...(lengths.length > 0 && { legs: lengths }),
      },
    }
  },
  rollers: (around) => {
    const motor = pick(around, 'motor', (each) => -power(each))
    const diameter = 0.05
    const driveSpeed = Math.min(3, around.robot.drive.topSpeed)
    return {
      calculator: 'rollers',
      input: {
        ...electric(motor, 1, 30),
        // Common practice, without a source: a surface speed of about twice the drive speed.
        reduction: roughly((motor.freeSpeed * diameter) / 2 / (2.2 * driveSpeed)),
        rollerDiameter: diameter,
        travel: 0.5,
        pieceMass: 0.3,
        grip: { kind: 'range', low: 6, likely: 10, high: 15 },
        drag: { kind: 'range', low: 1, likely: 2, high: 4 },
        slip: 0.1,
        driveSpeed,
      },
    }
  },
  motorArm: (around) => {
    const motor = pick(around, 'motor', power)
    const limited = motor.stallTorque * Math.min(1, 40 / motor.stallCurrent)
    return {
      calculator: 'pivot',
      input: {
        by: 'motor',
        ...electric(motor, 1, 40),
        efficiency: { kind: 'range', low: 0.6, likely: 0.7, high: 0.8 },
        // Three times what holds the arm level, so that it lifts and brakes well.
        reduction: roughly(Math.max(1, (3 * swing.mass * gravity * swing.centre) / (0.6 * limited))),
        ...swing,
        end: 'brake',
      },
    }
  },
  cylinderArm: (around) => {
    const air = pneumatic(around)
    // A lever that suits a stroke of 0.2 m, drawn larger or smaller for another one.
    const size = air.cylinder.stroke / 0.2
    return {
      calculator: 'pivot',
      input: {
        by: 'cylinder',
        ...air,
        ...swing,
        frame: [0.1 * size, -0.35 * size],
        radius: 0.12 * size,
        offset: 0,
        closedLength: 0.27 * size,
      },
    }
  },
  spinUp: (around) => wheelOf(around, 'spinUp'),
  recovery: (around) => wheelOf(around, 'recovery'),
  shot: (around) => ({
    calculator: 'shot',
    input: {
      releaseHeight: 0.8,
      angle: 0.96,
      targetHeight: 2.4,
      distance: { kind: 'range', low: 2.8, likely: 3, high: 3.3 },
      pieceMass: 0.25,
      pieceDiameter: 0.18,
      dragCoefficient: 0.47,
      airDensity: 1.2,
      wheelDiameter: pick(around, 'wheel', (wheel) => wheel.inertia).diameter,
      transfer: 0.5,
      exitSpeed: null,
      opening: { size: 0.6, lies: 'upright' },
      speedError: 0.02,
      angleError: 0.01,
    },
  }),
  cylinder: (around) => ({
    calculator: 'cylinder',
    input: { ...pneumatic(around), direction: 'extend', mass: 5, load: 40, stop: null },
  }),
}

function wheelOf(around: Around, stage: 'spinUp' | 'recovery'): Unnamed {
  const motor = pick(around, 'motor', power)
  const wheel = pick(around, 'wheel', ({ inertia }) => inertia)
  const exitSpeed = 9
  // One wheel against a hood gives the piece about half of its surface speed; a tenth more is kept in hand.
  const target = Math.round((2.2 * exitSpeed) / (wheel.diameter / 2))
  return {
    calculator: 'wheel',
    input: {
      ...electric(motor, 1, 40),
      reduction: roughly((0.75 * motor.freeSpeed) / target),
      stage,
      inertia: wheel.inertia > 1e-7 ? wheel.inertia : 0.001,
      drag: { kind: 'range', low: 0.02, likely: 0.05, high: 0.1 },
      wheelDiameter: wheel.diameter,
      from: 0,
      target,
      shot: { pieceMass: 0.25, exitSpeed, transfer: 0.5 },
    },
  }
}

/** What makes a mechanism easier when the parts at hand are too weak for the first numbers. */
const loads = ['mass', 'inertia', 'load', 'drag', 'friction'] as const
const mostHalvings = 12

/** A mechanism of a kind with first numbers that it can do: loads are halved until the parts at hand carry them. */
export function firstMechanism(kind: MechanismKind, named: { id: string; name: string }, around: Around): Mechanism {
  let made = { ...named, ...makers[kind](around) } as Mechanism
  for (let halved = 0; halved < mostHalvings && !mechanismAnswer(made).possible; halved++) {
    const input = made.input as unknown as { [key: string]: unknown }
    const lighter = loads.flatMap((key) => (typeof input[key] === 'number' ? [[key, Number(input[key]) / 2]] : []))
    made = { ...made, input: { ...input, ...Object.fromEntries(lighter) } } as unknown as Mechanism
  }
  return made
}
