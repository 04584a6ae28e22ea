import type { Game, Option } from '../../documents/types.ts'
import type { Both } from '../types.ts'

/** A robot that plays in several matches. */
export interface SeasonTeam {
  team: string
  /** How it plays: one option, or one for each draw of what is not known of it. All teams have as many; draw d belongs together. */
  draws: readonly Option[]
}

export interface SeasonMatch {
  id: string
  /** Three teams each, by position. */
  ours: readonly string[]
  theirs: readonly string[]
}

export interface SeasonRequest {
  game: Game
  /** Of the event: which number a bonus asks for. */
  level?: string | undefined
  teams: readonly SeasonTeam[]
  matches: readonly SeasonMatch[]
  /** Seasons to draw; each holds one draw of the teams throughout. */
  seasons: number
  seed: number
  /** The most simulated matches per match, and the standard error of win + ½ tie to be content with before. */
  replicates: number
  precision: number
}

/** What some simulated matches of one match came to, one entry a match. */
export interface Records {
  /** Of the match's draws, which one was played. */
  readonly draw: Uint16Array
  readonly ours: Float64Array
  readonly theirs: Float64Array
  /** Ranking points apart from those of win, tie and loss: bonuses and adjustments. */
  readonly oursExtra: Float64Array
  readonly theirsExtra: Float64Array
}

/** Closed-form expected points of both alliances, by draw. */
export type Expected = Both<Float64Array>

/** A match with its simulated matches, from which any number can be drawn. */
export interface Calibration {
  readonly records: Records
  readonly expected: Expected
}

export interface MatchForecast {
  id: string
  /** Simulated matches that it rests on. */
  replicates: number
  score: Both<{ mean: number; sd: number }>
  win: number
  tie: number
  loss: number
  /** Of win + ½ tie, by the luck of the simulated matches. */
  standardError: number
  /** Expected, of one robot of the alliance. */
  rankingPoints: Both<number>
}

export interface TeamForecast {
  team: string
  matches: number
  /** Ranking points of all its matches: over the seasons. */
  rankingPoints: { mean: number; sd: number; p10: number; p50: number; p90: number }
}

export interface SeasonReport {
  seasons: number
  seed: number
  matches: MatchForecast[]
  teams: TeamForecast[]
  /**
   * How far these chances of win + ½ tie are off the simulation, root mean square over the matches: in all, and what of it is
   * not the luck of the simulated matches. Estimated by holding half of them out.
   */
  error: { total: number; structure: number }
}
