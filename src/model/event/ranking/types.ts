import type { Ranking } from '../../documents/types.ts'
import type { Alliance } from '../../scouting/types.ts'

/** What orders teams: ranking points first, then what the game says. */
export type Criterion = 'rankingPoints' | Ranking['then'][number]

/** A team's part in one match of the ranking, to be opened from its row. */
export interface Share {
  match: string
  alliance: Alliance
  /** absent and disqualified: nothing is earned. apart: a surrogate, whose match counts for nothing. */
  as: 'won' | 'tied' | 'lost' | 'absent' | 'disqualified' | 'apart'
  rankingPoints: number
  /** Ids of the bonuses that it was paid for. */
  bonuses: string[]
  /** What it brought for each criterion, ranking points first. */
  brought: number[]
}

export interface RankingRow {
  rank: number
  team: string
  /** Matches that count for it. */
  played: number
  won: number
  tied: number
  lost: number
  absent: number
  disqualified: number
  /** Matches as a surrogate. */
  apart: number
  /** By criterion, in their order: the sum over its matches. */
  sums: number[]
  /** By criterion: what is compared, the mean a match or the sum, as the game says. */
  values: number[]
  /** Which criterion puts it before the next team: its place among them; null: drawn by lot, or nobody is next. */
  decidedBy: number | null
  /** It was level with a neighbour in everything, and the lot decided between them. */
  byLot: boolean
  shares: Share[]
}

export interface EventRanking {
  criteria: Criterion[]
  per: Ranking['per']
  seed: number
  rows: RankingRow[]
  /** How many matches count, are voided by a later play, and have no result yet. */
  counted: number
  voided: number
  waiting: number
  /** What results do not tell though the ranking asks for it: counted as not reached, or as nothing. */
  untold: { match: string; alliance: Alliance; bonuses: string[]; criteria: number[] }[]
}
