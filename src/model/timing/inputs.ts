import type { Compressor, Cylinder, Motor, Tank, Valve } from './parts.ts'
import type { Uncertain } from './types.ts'

/**
 * What each calculator is given. `N` is Uncertain at the edge and a plain number inside, once the spreads are settled.
 * Units are SI: metres, seconds, kilograms, radians, volts, amperes, kelvins, pascals (absolute).
 */

/** Motors of one kind behind one gearbox, fed by one source. */
export interface Electric<N = Uncertain> {
  motor: Motor
  /** How many share the load. */
  motors: number
  /** Turns of the motor for one turn of what it drives. */
  reduction: N
  /** Share of the torque that reaches the output. */
  efficiency: N
  /** Per motor (A); null: none. */
  currentLimit: number | null
  /** Of the source without load (V). */
  voltage: N
  /** Of battery and wiring, as all these motors together see it (Ω). */
  sourceResistance: N
  /** Voltage below which controllers cut back (V), only to warn; null: not watched. */
  lowestVoltage: number | null
}

export interface DriveInput<N = Uncertain> extends Electric<N> {
  wheelDiameter: N
  /** Of the robot, everything on it included. */
  mass: N
  /** Tyre on floor. */
  friction: N
  /** Share of the weight that stands on driven wheels. */
  drivenShare: N
  /** Force that has to be overcome at any speed (N). */
  rollingResistance: N
  /** Greatest deceleration that the driver or the program uses (m/s²); null: what the tyres hold. */
  brakingLimit: number | null
  distance: N
  /** Whether it stands at the end, or passes. */
  stops: boolean
  /** Lengths of the game's legs (m), for the trapezoid that fits them best; weight: how often each is driven. */
  legs?: { length: number; weight: number }[]
}

export interface RollersInput<N = Uncertain> extends Electric<N> {
  rollerDiameter: N
  /** How far the piece is drawn in (m). */
  travel: N
  pieceMass: N
  /** Force at which the rollers slip on the piece (N): friction times squeeze. */
  grip: N
  /** Force that holds the piece back while it is drawn in (N). */
  drag: N
  /** Share of the surface speed that the piece never gets. */
  slip: N
  /** Of the robot while it collects (m/s). */
  driveSpeed: N
}

/** What turns about a pivot. Angles are measured from level, upwards. */
interface Swing<N> {
  /** About the pivot, what it carries included (kg·m²). */
  inertia: N
  /** kg. */
  mass: N
  /** From the pivot to the centre of mass (m). */
  centre: N
  /** rad. */
  from: N
  to: N
  /** Torque of friction in the pivot (N·m). */
  friction: N
  /** Angles at which something is in the way (rad); null: nothing. */
  stops: { low: number; high: number } | null
}

export interface MotorPivotInput<N = Uncertain> extends Electric<N>, Swing<N> {
  by: 'motor'
  /** brake: comes to rest by itself, with at most the torque of the way up; stop: runs against a stop there. */
  end: 'brake' | 'stop'
}

/** Cylinders of one kind side by side with their valves. */
export interface Pneumatic<N = Uncertain> {
  cylinder: Cylinder
  cylinders: number
  /** Flow path into each cylinder, and out of it. */
  supply: Valve
  exhaust: Valve
  /** Regulated pressure before the valve (Pa). */
  pressure: N
  /** Of the room (Pa). */
  ambient: N
  /** Of the air (K). */
  temperature: N
  /** Of one cylinder's seals and guides (N). */
  cylinderFriction: N
  /** On either side of one piston at its end, tube included (m³). */
  deadVolume: N
  /** What is on the far side of the piston before: the working pressure of the stroke before, or the room's. */
  farSide: 'charged' | 'vented'
}

export interface CylinderPivotInput<N = Uncertain> extends Pneumatic<N>, Swing<N> {
  by: 'cylinder'
  /** Where the cylinder's fixed end is hinged, from the pivot: forward and up (m). */
  frame: [number, number]
  /** From the pivot to where its rod is hinged on the arm (m). */
  radius: N
  /** Of that hinge from the arm's own direction (rad). */
  offset: N
  /** From hinge to hinge with the rod drawn in (m). */
  closedLength: N
}

export type PivotInput<N = Uncertain> = MotorPivotInput<N> | CylinderPivotInput<N>

export interface WheelInput<N = Uncertain> extends Electric<N> {
  /** What is timed. */
  stage: 'spinUp' | 'recovery'
  /** Of everything that turns with the wheel, without the rotors (kg·m²). */
  inertia: N
  /** Torque that has to be overcome at any speed (N·m). */
  drag: N
  wheelDiameter: N
  /** Speed before spinning up (rad/s). */
  from: N
  /** Speed to shoot at (rad/s). */
  target: N
  /** What one shot takes; needed for a recovery. */
  shot: {
    pieceMass: N
    /** m/s. */
    exitSpeed: N
    /** Share of the energy taken from the wheel that the piece gets. */
    transfer: N
  } | null
}

export interface ShotInput<N = Uncertain> {
  /** Of the piece's centre when it leaves (m). */
  releaseHeight: N
  /** Above level (rad). */
  angle: N
  /** Of the middle of the opening (m). */
  targetHeight: N
  /** Level distance from release to the middle of the opening (m). */
  distance: N
  pieceMass: N
  pieceDiameter: N
  /** 0: without drag. */
  dragCoefficient: N
  /** kg/m³. */
  airDensity: N
  wheelDiameter: N
  /** Exit speed over the wheel's surface speed: about 0.5 for one wheel against a fixed hood, 1 between two. */
  transfer: N
  /** Given (m/s), or null: the one that meets the middle. */
  exitSpeed: N | null
  /** Clear size (m), and whether it is an upright gap or a level ring; null: not looked at. */
  opening: { size: number; lies: 'upright' | 'level' } | null
  /** How far the exit speed can be off, as a share, and the angle (rad). */
  speedError: number
  angleError: number
}

export interface CylinderInput<N = Uncertain> extends Pneumatic<N> {
  direction: 'extend' | 'retract'
  /** That all cylinders together move (kg). */
  mass: N
  /** Against the movement, weight included; below 0 it helps (N). */
  load: N
  /** Travel at which a hard stop ends the movement (m); null: the full stroke. */
  stop: N | null
}

/** Movements of one cylinder in a cycle. */
export interface Strokes {
  cylinder: Cylinder
  /** Travel at which a hard stop ends the movement (m); null: the full stroke. */
  stop: number | null
  /** On either side of the piston, tube included (m³). */
  deadVolume: number
  /** Strokes out per cycle. */
  out: number
  /** Strokes back per cycle. */
  back: number
}

export interface AirInput<N = Uncertain> {
  tank: Tank
  tanks: number
  /** At the match's start (Pa). */
  stored: N
  /** Regulated (Pa): below it strokes are slow and weak. */
  working: N
  ambient: N
  strokes: Strokes[]
  /** Free air at the room's pressure that is lost (m³/s). */
  leak: N
  /** It starts at or below `on` and ends at `off` (Pa); null: none. */
  compressor: { part: Compressor; on: number; off: number } | null
  /** From cycle to cycle (s). */
  cycleSeconds: N
  /** How long it has to last (s). */
  matchSeconds: N
}

/** Names of the calculators and what each is given. */
export interface Inputs<N = Uncertain> {
  drive: DriveInput<N>
  rollers: RollersInput<N>
  pivot: PivotInput<N>
  wheel: WheelInput<N>
  shot: ShotInput<N>
  cylinder: CylinderInput<N>
  air: AirInput<N>
}

export type CalculatorName = keyof Inputs
