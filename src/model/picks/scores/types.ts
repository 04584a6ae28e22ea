import type { Option } from '../../documents/types.ts'

/**
 * What a team is expected to do alone in a match, nobody in its way, one number a draw of what is not known. Chances of not
 * coming and of stopping are in it: whoever stops has played half of the match on average.
 */
export interface Rating {
  /** All points. */
  points: Float64Array
  /** What they are made of: autonomous, goals of teleop in the game's order, finishes. */
  autonomous: Float64Array
  goals: readonly Float64Array[]
  finishing: Float64Array
  /** Pieces placed by goal, those of autonomous among them. */
  pieces: readonly Float64Array[]
  /** Share of its pieces that hit, by goal. */
  hits: readonly Float64Array[]
  /** Chance of each finish. */
  finishes: readonly Float64Array[]
}

/** A team as pick order, seeds and playoffs know it. */
export interface RatedTeam {
  team: string
  /** By common draw: draw d of all teams belongs to one state of the event. */
  rating: Rating
  /** As a robot of simulated matches, and the same for each of its habit's draws: a simulated match meets one of them. */
  option: Option
  met: Rating
}

/** The same without the robot, where nothing is simulated any more. */
export type RatedNumbers = Omit<RatedTeam, 'option'>

/** Simulated matches of two alliances, one entry a match; of two sides ours first, at 2 · k and 2 · k + 1. */
export interface Played {
  /** By seat, ours first: number of the draw that the team met, at 6 · k + seat. */
  met: Uint16Array
  scores: Float64Array
  /** One bit each in the game's order: which bonuses were reached. */
  bonuses: Uint32Array
  /** What breaks ties in the ranking, in the game's order, by side: at (2 · k + side) · criteria + c. */
  criteria: Float64Array
}

/** Two alliances by their teams; three robots each. */
export interface Pairing {
  ours: readonly string[]
  theirs: readonly string[]
}
