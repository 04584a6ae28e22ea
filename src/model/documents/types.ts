import type { StoredAir } from './air.ts'
import type { Habit } from './habit.ts'
import type { HardwareLink, Mechanism } from './mechanism.ts'

/**
 * The documents of the model: a season's game, a robot, and an option (a robot with a way to play it).
 * Units are SI: metres, seconds, kilograms. Times in a plan are time left in teleop.
 */

/** How long something takes, and how that varies from trip to trip. Seconds (a pace: factor per leg). */
export type Duration =
  | { kind: 'fixed'; seconds: number }
  | { kind: 'range'; low: number; likely: number; high: number }
  | { kind: 'lognormal'; median: number; spread: number }
  | { kind: 'samples'; seconds: number[] }

/** A point of the field in the alliance's own coordinates: x along the length from its own wall, y along the width (m). */
export type Point = [number, number]

export interface Spot {
  id: string
  at: Point
}

export interface Piece {
  id: string
  name: string
}

export interface Clock {
  auto: number
  pause: number
  teleop: number
  endgame: number
}

export interface Obstacle {
  id: string
  name: string
  outline: Point[]
}

export interface Field {
  length: number
  width: number
  clearance: number
  symmetry: 'mirror' | 'rotate'
  obstacles: Obstacle[]
}

export interface Start {
  id: string
  name: string
  at: Point
}

export interface Source {
  id: string
  name: string
  piece: string
  spots: Spot[]
  slots: number
  stock: number | null
  restock: { every: number; size: number } | null
  shared: boolean
}

export type Award =
  | { kind: 'each'; auto: number; teleop: number }
  | { kind: 'hold'; autoPerSecond: number; teleopPerSecond: number }

export interface Goal {
  id: string
  name: string
  accepts: string[]
  spots: Spot[]
  slots: number
  capacity: number | null
  award: Award
}

export interface Finish {
  id: string
  name: string
  spots: Spot[]
  slots: number
  points: number
}

export type Metric =
  | { kind: 'pieces'; goals: string[] }
  | { kind: 'autoPoints' }
  | { kind: 'finishPoints' }
  | { kind: 'finished'; finishes: string[] }
  | { kind: 'heldSeconds'; goal: string }

export interface Bonus {
  id: string
  name: string
  rankingPoints: number
  points: number
  metric: Metric
  atLeast: number | { [level: string]: number }
  scope: 'own' | 'both'
}

export interface Ranking {
  win: number
  tie: number
  loss: number
  per: 'match' | 'total'
  then: ('score' | 'autoPoints' | 'finishPoints' | { pieces: string[] })[]
}

/** The season's rules and field. */
export interface Game {
  format: 1
  id: string
  name: string
  pieces: Piece[]
  clock: Clock
  field: Field
  starts: Start[]
  sources: Source[]
  goals: Goal[]
  finishes: Finish[]
  leave: { points: number } | null
  sets: { id: string; name: string; needs: { [goal: string]: number }; points: number }[]
  bonuses: Bonus[]
  ranking: Ranking
  fouls: { minor: number; major: number }
  limits?: { mass: number; cost: number }
}

export interface Stage {
  id: string
  name: string
  duration: Duration
  /** Ids of the stages that must end first; `drive` is built in. */
  after: string[]
  /** Done once per piece of the load, independent draws in series. */
  each?: boolean
  hardware?: HardwareLink
}

/** How a leg's time comes about: a network of stages, or one Duration for the whole leg, driving included. */
export type Trip = { stages: Stage[] } | { whole: Duration }

export type CollectTrip = Trip & { success: number; retry: Duration | null }
export type ScoreEntry = Trip & { spots: string[] | 'any'; success: number }
export type FinishTrip = Trip & { success: number; otherwise: string | null }

export interface Load {
  piece: string
  count: number
}

export interface AutoStep {
  /** Seconds since the match's start. */
  at: number
  goal: string
  piece: string
  count: number
  success: number
  needsPrevious: boolean
}

export interface Auto {
  id: string
  name: string
  starts: string[]
  steps: AutoStep[]
  /** Probability of moving off the start. */
  leaves: number
  /** Id of the start or spot where the routine ends. */
  endsAt: string
  holding: Load | null
  path?: [number, number, number][]
  takes?: { source: string; count: number }[]
}

export interface Drive {
  topSpeed: number
  acceleration: number
  deceleration: number
  /** A factor per leg on the drive's time; support at least 1. */
  pace: Duration
  /** Times (s) from rest to rest that are known better than what is computed, the same both ways; without the pace. */
  times?: { from: string; to: string; seconds: number }[]
  /** Of topSpeed, acceleration and deceleration. */
  hardware?: HardwareLink
}

export interface Robot {
  format: 1
  id: string
  name: string
  footprint: { length: number; width: number }
  drive: Drive
  form: { spread: number }
  carries: { [piece: string]: number }
  preload: Load | null
  collect: { [source: string]: CollectTrip }
  score: { [goal: string]: ScoreEntry[] }
  finish: { [finish: string]: FinishTrip }
  autos: Auto[]
  reliability: { absent: number; stops: number }
  fouls: { minorPerMatch: number; majorPerMatch: number }
  defence: { slowdown: number; minorPerMinute: number; majorPerMinute: number }
  habit?: Habit
  budget?: { mass: number; cost: number; hours: number; readyBy: string }
  mechanisms?: Mechanism[]
  air?: StoredAir
}

export interface Role {
  sources: string[]
  goals: string[]
  finishes: string[]
  defend: { mark: 0 | 1 | 2; from: number; until: number } | null
}

export type FinishMode = { mode: 'best' } | { mode: 'skip' } | { mode: 'always'; at: number }

/** A robot with a way to play it. */
export interface Option {
  format: 1
  id: string
  name: string
  robot: Robot
  start: string
  auto: string | null
  role: Role
  finish: FinishMode
  /** Seconds of holding that one piece buys, per hold goal. */
  holdSeconds: { [goal: string]: number }
  adjust: { label: string; points: number; rankingPoints: number }[]
}
