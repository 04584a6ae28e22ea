import type { Game, Option } from '../../documents/types.ts'
import type { Sums } from '../tally.ts'
import type { Chance } from '../types.ts'

/** What a choice between options is judged by. */
export type Objective = 'points' | 'win' | 'rankingPoints'

/** Options that take the same place, in turn, beside the same partners against the same opponents. */
export interface StatedRequest {
  game: Game
  /** Of the event: which number a bonus asks for. */
  level?: string | undefined
  options: readonly Option[]
  /** Two that play with each option, which stands at position 1. */
  partners: readonly Option[]
  /** Three that play against it. */
  opponents: readonly Option[]
  /** Matches of each option. */
  replicates: number
  seed: number
}

export interface Mean {
  mean: number
  standardError: number
}

/** What is told of each option: the chance to win, a tie counting half, our ranking points and our score. */
export const measures = ['win', 'rankingPoints', 'score'] as const
export type Measure = (typeof measures)[number]

export interface StatedOption {
  id: string
  /** Share of matches won, where a tie is no win, and with a tie as half of one. */
  won: Chance
  win: Mean
  rankingPoints: Mean
  score: Mean
  /** How often our alliance earns each bonus. */
  bonuses: { [bonus: string]: Chance }
}

/** Options by what they come to in whole matches. Errors are those of the simulation alone. */
export interface StatedReport {
  replicates: number
  seed: number
  options: StatedOption[]
  /** One option's value less another's, match by match on the same luck. */
  differences: { [own: string]: { [other: string]: { [measure in Measure]: Mean } } }
}

/** Matches added up: those of each option, and the squares of the differences of each pair, measure by measure. */
export interface StatedSums {
  options: Sums[]
  squares: Float64Array
}
