import type { Answer } from './types.ts'

/** What each calculator answers besides the time. Units are SI, pressures absolute. */

/** Where the source and the motors are pushed hardest on the way. */
export interface ElectricQuantities {
  /** Highest current of one motor (A). */
  motorCurrent: number
  /** Highest current out of the source, all motors together (A). */
  sourceCurrent: number
  /** Lowest voltage of the source (V). */
  sourceVoltage: number
}

export interface DriveQuantities extends ElectricQuantities {
  /** Where the motors' force only just overcomes the resistance (m/s). */
  topSpeed: number
  /** Highest on this way (m/s). */
  peakSpeed: number
  /** At the start (m/s²), and what limits it. */
  acceleration: number
  limitedBy: 'traction' | 'currentLimit' | 'motor'
  /** Speed up to which that limit holds (m/s); 0 where the motors limit from the start. */
  kneeSpeed: number
  /** m/s². */
  deceleration: number
  /** What the tyres hold (N). */
  tractionForce: number
  /** What the motors could push with at the start (N). */
  launchForce: number
  /** Until braking begins (s), and from then on. */
  runningSeconds: number
  brakingSeconds: number
  /** Null where no legs are given. */
  trapezoid: Trapezoid | null
}

/** Drive of a Robot document that comes closest over the legs, and by how much it misses them. */
export interface Trapezoid {
  topSpeed: number
  acceleration: number
  deceleration: number
  /** Root mean square and greatest difference of a leg's time (s). */
  rms: number
  worst: number
  legs: { length: number; seconds: number; fitted: number }[]
}

export interface MotionCurves {
  time: number[]
  speed: number[]
  distance: number[]
  /** Of one motor (A). */
  current: number[]
}

export interface RollersQuantities extends ElectricQuantities {
  /** Of the rollers with nothing in them (m/s). */
  surfaceSpeed: number
  /** Of the piece when it is in (m/s). */
  pieceSpeed: number
  /** Surface speed over drive speed; null where the robot stands. */
  ratio: number | null
  /** At the rollers' surface, all motors at a standstill (N). */
  stallForce: number
  /** How far the rollers slide on the piece before it follows (m). */
  slidingDistance: number
}

export interface PivotQuantities {
  /** Of gravity at its greatest on the way (N·m). */
  gravityTorque: number
  /** That is there at the start, friction and gravity not taken off (N·m). */
  startTorque: number
  /** Greatest on the way (rad/s). */
  peakSpeed: number
  /** When it arrives (rad/s), and the energy that goes into the stop (J). */
  endSpeed: number
  endEnergy: number
  /** Where braking begins (rad); null where it does not brake. */
  brakingFrom: number | null
  /** Motor: highest current of one, and what holding the end angle takes of one (A); null for a cylinder. */
  motorCurrent: number | null
  holdingCurrent: number | null
  /** Motors: highest current out of the source (A) and its lowest voltage (V); null for a cylinder. */
  sourceCurrent: number | null
  sourceVoltage: number | null
  /** Cylinder: part of its stroke that is used (m), and free air at the room's pressure (m³); null for motors. */
  strokeUsed: number | null
  freeAir: number | null
}

export interface PivotCurves {
  time: number[]
  /** rad. */
  angle: number[]
  /** rad/s. */
  speed: number[]
  /** Motors: of one (A). Empty for a cylinder. */
  current: number[]
  /** Cylinder: pressure that pushes and pressure that resists (Pa). Empty for motors. */
  pressure: number[]
  backPressure: number[]
}

export interface WheelQuantities extends ElectricQuantities {
  /** Where the motors' torque only just overcomes the drag (rad/s). */
  freeSpeed: number
  /** Speed up to which the current limit holds the torque constant (rad/s). */
  kneeSpeed: number
  /** Time constant of the last part (s). */
  timeConstant: number
  /** At the target speed (m/s). */
  surfaceSpeed: number
  /** At the target speed (J). */
  energy: number
  /** Speed right after a shot (rad/s), share of speed lost, and time to come back (s); null without a shot, or where it does not come back. */
  speedAfterShot: number | null
  speedLost: number | null
  recoverySeconds: number | null
  spinUpSeconds: number
}

export interface WheelCurves {
  time: number[]
  /** rad/s. */
  speed: number[]
  /** Of one motor (A). */
  current: number[]
}

export interface ShotQuantities {
  /** m/s. */
  exitSpeed: number
  /** Closed form without drag (m/s). */
  vacuumSpeed: number
  /** Least speed that reaches the middle at any angle, without drag (m/s), and that angle (rad). */
  leastSpeed: number
  leastAngle: number
  /** Of the wheel (rad/s). */
  wheelSpeed: number
  wheelSurfaceSpeed: number
  /** Highest point (m) above the floor. */
  apex: number
  /** At the opening (m/s), and the angle there above level (rad): below 0 it falls. */
  arrivalSpeed: number
  arrivalAngle: number
  /** How far the middle is missed at the opening (m); above 0: too high, or for a level ring too far. */
  miss: number
  /** At the worst of the errors: what is left between piece and rim (m); below 0 it hits the rim. Null without an opening. */
  margin: number | null
}

export interface ShotCurves {
  time: number[]
  /** Level distance from release, and height above the floor (m). */
  distance: number[]
  height: number[]
}

export interface CylinderQuantities {
  /** All cylinders at rest, at full pressure against the room's, without friction (N). */
  force: number
  /** Travel with the stop (m). */
  travel: number
  /** One stroke of all cylinders: free air at the room's pressure, dead volumes included (m³). */
  freeAir: number
  /** When it arrives (m/s), and the energy that goes into the end (J). */
  endSpeed: number
  endEnergy: number
  peakSpeed: number
  /** Closed form: speed at which choked exhaust lets the piston go (m/s). */
  flowSpeed: number
  /** When it begins to move (s). */
  startsAt: number
  /** In the middle of the travel: whether the flow in and the flow out are choked. */
  supplyChoked: boolean
  exhaustChoked: boolean
}

export interface CylinderCurves {
  time: number[]
  distance: number[]
  speed: number[]
  /** That pushes, and that resists (Pa). */
  pressure: number[]
  backPressure: number[]
}

export interface AirQuantities {
  /** One cycle: free air at the room's pressure (m³), and the drop of the tank's pressure (Pa). */
  freeAir: number
  pressureDrop: number
  /** Cycles that the match has, and that are done before the working pressure is lost. */
  cyclesInMatch: number
  cycles: number
  /** The same with air that cools in the tank (the cautious bound). */
  cyclesAdiabatic: number
  /** When the working pressure is lost (s from the match's start); null: never in the match. */
  lostAt: number | null
  lostAtAdiabatic: number | null
  /** Pressure at the match's end (Pa). */
  endPressure: number
  /** Shortest time between cycles that the compressor sustains (s); null where it can not. */
  sustainedSeconds: number | null
  /** Share of the match in which the compressor runs; null without one. */
  compressorDuty: number | null
}

export interface AirCurves {
  time: number[]
  /** Of the tanks (Pa). */
  pressure: number[]
  /** The cautious bound (Pa). */
  pressureAdiabatic: number[]
}

export type DriveAnswer = Answer<DriveQuantities, MotionCurves>
export type RollersAnswer = Answer<RollersQuantities, MotionCurves>
export type PivotAnswer = Answer<PivotQuantities, PivotCurves>
export type WheelAnswer = Answer<WheelQuantities, WheelCurves>
export type ShotAnswer = Answer<ShotQuantities, ShotCurves>
export type CylinderAnswer = Answer<CylinderQuantities, CylinderCurves>
/** `seconds` is what the compressor needs for one cycle's air above the working pressure; null where it can not bring it. */
export type AirAnswer = Answer<AirQuantities, AirCurves, number | null>

export interface Answers {
  drive: DriveAnswer
  rollers: RollersAnswer
  pivot: PivotAnswer
  wheel: WheelAnswer
  shot: ShotAnswer
  cylinder: CylinderAnswer
  air: AirAnswer
}
