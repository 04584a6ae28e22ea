/**
 * The parts shelf: what a calculator needs to know about bought parts, as somebody read it off a data sheet or measured it.
 * Units are SI; pressures are absolute.
 */

/** Where a part's numbers come from. */
export interface Provenance {
  id: string
  name: string
  /** Data sheet, measurement, or guess. */
  source: string
  /** Day on which the numbers were taken over, ISO 8601. */
  date: string
}

/** A direct-current motor with its controller at full voltage; torque falls in a straight line with speed. */
export interface Motor extends Provenance {
  kind: 'motor'
  /** Voltage at which the other numbers hold (V). */
  nominalVoltage: number
  /** Without a load (rad/s). */
  freeSpeed: number
  /** Without a load (A). */
  freeCurrent: number
  /** N·m. */
  stallTorque: number
  /** A. */
  stallCurrent: number
  /** Of the rotor about its own axis (kg·m²); not given: neglected. */
  rotorInertia?: number
}

/** A double-acting cylinder with its rod on one side. */
export interface Cylinder extends Provenance {
  kind: 'cylinder'
  /** Diameter of the piston (m). */
  bore: number
  /** Diameter of the rod (m); less than the bore. */
  rod: number
  /** Full travel (m). */
  stroke: number
}

/** A valve with its fittings and tube as one flow path, by ISO 6358. */
export interface Valve extends Provenance {
  kind: 'valve'
  /** Sonic conductance C (m³/(s·Pa)) of free air at 100 kPa and 293.15 K; 1 dm³/(s·bar) is 1e-8. */
  conductance: number
  /** Critical pressure ratio b: at or below it the flow is choked. */
  criticalRatio: number
}

export interface Compressor extends Provenance {
  kind: 'compressor'
  /** [pressure that it works against (Pa), free air (m³/s) at 100 kPa]; pressures rise, flows do not; straight between, no flow above. */
  flow: [number, number][]
}

export interface Tank extends Provenance {
  kind: 'tank'
  /** m³. */
  volume: number
  /** What it may hold by its maker (Pa). */
  highestPressure: number
}

/** A wheel or roller; calculators take its numbers one by one, because each can be uncertain. */
export interface Wheel extends Provenance {
  kind: 'wheel'
  /** m. */
  diameter: number
  /** kg. */
  mass: number
  /** About its axis (kg·m²). */
  inertia: number
  /** Of its tread on the field's floor, or on a piece. */
  friction: number
}

export type Part = Motor | Cylinder | Valve | Compressor | Tank | Wheel
