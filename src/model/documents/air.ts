import type { Compressor, Tank } from '../timing/parts.ts'
import type { Mechanism } from './mechanism.ts'
import type { TimedLeg } from './timing.ts'
import type { Robot } from './types.ts'

/** How often the cylinders of a mechanism move: strokes of the rod out and back; shares count, for tries that are repeated. */
export interface AirUse {
  /** Id of a mechanism of the robot that is moved by air. */
  mechanism: string
  out: number
  back: number
}

/** The same in each trip of one kind. */
export interface AirOfTrip extends AirUse {
  leg: TimedLeg
}

/**
 * The stored air of a robot (model, section 7). Pressures are absolute (Pa); parts are copied, so that a design means the
 * same when the shelf changes.
 */
export interface StoredAir {
  tank: Tank
  tanks: number
  /** At the match's start. */
  stored: number
  /** Behind the regulator. */
  working: number
  /** Of the room. */
  ambient: number
  /** Free air at the room's pressure that is lost (m³/s). */
  leak: number
  /** It starts at or below `on` and ends at `off` (Pa); null: none. */
  compressor: { part: Compressor; on: number; off: number } | null
  trips: AirOfTrip[]
  /** In the whole of autonomous. */
  autonomous: AirUse[]
  /** Pressure that strokes are timed with once the working pressure is lost (Pa). */
  low: number
  /** What a stage is multiplied by then where its mechanism can not be timed at that pressure; at least 1. */
  slower: number
}

/** A mechanism that cylinders move. */
export type PneumaticMechanism = Mechanism<'cylinder' | 'pivot'>

export const isPneumatic = (mechanism: Mechanism): mechanism is PneumaticMechanism =>
  mechanism.calculator === 'cylinder' || (mechanism.calculator === 'pivot' && mechanism.input.by === 'cylinder')

/** Mechanisms of a robot that cylinders move, in the robot's order. */
export const pneumaticMechanisms = (robot: Robot): PneumaticMechanism[] => (robot.mechanisms ?? []).filter(isPneumatic)

/** Whether two names of a leg mean the same one. */
export function sameLeg(a: TimedLeg, b: TimedLeg): boolean {
  if (a.kind === 'collect') return b.kind === 'collect' && a.source === b.source
  if (a.kind === 'finish') return b.kind === 'finish' && a.finish === b.finish
  return b.kind === 'score' && a.goal === b.goal && a.entry === b.entry
}
