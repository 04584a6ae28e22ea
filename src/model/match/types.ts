import type { Game, Option } from '../documents/types.ts'

/** A mean over matches, with the standard deviation of one match and the standard error of the mean. */
export interface Measured {
  mean: number
  sd: number
  standardError: number
}

export interface Chance {
  probability: number
  standardError: number
}

/** A number estimated from matches that is no plain mean. */
export interface Estimated {
  value: number
  standardError: number
}

/** The same of our alliance and of theirs. */
export interface Both<T> {
  ours: T
  theirs: T
}

export interface MatchRequest {
  game: Game
  /** Of the event: which number a bonus asks for. */
  level?: string | undefined
  ours: readonly Option[]
  theirs: readonly Option[]
  /** Matches to play; the most where a precision is asked for. */
  replicates: number
  seed: number
  /** Largest standard error of win + ½ tie to be content with. */
  precision?: number | undefined
}

export interface RobotReport {
  points: Measured
  /** Pieces placed by goal, autonomous included; finishes achieved; seconds waited by source and goal; seconds marking. */
  pieces: { [goal: string]: Measured }
  finishes: { [finish: string]: Measured }
  waiting: { [place: string]: Measured }
  /** At all places together (s). */
  waited: Measured
  defending: Measured
}

export interface MatchReport {
  replicates: number
  seed: number
  score: Both<Measured>
  margin: Measured
  win: Chance
  tie: Chance
  loss: Chance
  rankingPoints: Both<Measured>
  autoPoints: Both<Measured>
  finishPoints: Both<Measured>
  bonuses: { [bonus: string]: Both<Chance> }
  /** Ours, then theirs. */
  robots: RobotReport[]
  heldSeconds: { [goal: string]: Both<Measured> }
  heldSecondsPerPiece: { [goal: string]: Both<{ average: Estimated; marginal: Estimated }> }
  /** [points, probability] by whole points, rising. */
  distributions: Both<[number, number][]> & { margin: [number, number][] }
}

/** Something that a replay shows, at an elapsed time (s). Places, spots and starts by their ids; robots 0–2 ours, 3–5 theirs. */
export type MatchEvent = { at: number; robot: number } & (
  | { kind: 'drives'; from: string; to: string; until: number; place: string; load: number }
  /** For a slot; for a restock. */
  | { kind: 'queues'; place: string }
  | { kind: 'waits'; place: string }
  | { kind: 'works'; place: string; until: number; load: number }
  /** One piece. */
  | { kind: 'places'; place: string }
  /** Null for a try that earned nothing. */
  | { kind: 'finishes'; place: string | null }
  | { kind: 'marks'; until: number }
  /** Moved off its start in time, where that pays; told when autonomous ends or the robot stops. */
  | { kind: 'leaves' }
  /** Of the whole match: the model gives them no times, so they are told at its end. */
  | { kind: 'fouls'; minor: number; major: number }
  /** Nothing is worth doing, for now or for good. */
  | { kind: 'rests' }
  | { kind: 'stops' }
)

/** One match from its start to its end. */
export interface Timeline {
  replicate: number
  score: Both<number>
  /** What comes to the score at the end and no event tells: points of bonuses, and adjustments of options. */
  atEnd: Both<{ bonuses: number; adjusted: number }>
  /** Whether each robot came. */
  played: boolean[]
  /** In the order of their times. */
  events: MatchEvent[]
}

/** Of the first matches of a seed: the one in the middle by its margin, our best and our worst. */
export interface SampleMatches {
  typical: Timeline
  best: Timeline
  worst: Timeline
}
