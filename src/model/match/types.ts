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
