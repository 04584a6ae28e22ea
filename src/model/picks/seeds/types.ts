import type { Game } from '../../documents/types.ts'

/** A place in a match to come. `counts` false: a surrogate, whose ranking points are not counted. */
export interface SeedSlot {
  team: string
  counts: boolean
}

export interface SeedMatch {
  id: string
  ours: readonly SeedSlot[]
  theirs: readonly SeedSlot[]
}

/** What a team has so far: matches that count, and sums of ranking points and then of the game's further criteria. */
export interface Standing {
  team: string
  played: number
  sums: readonly number[]
}

export interface SeedsRequest {
  game: Pick<Game, 'ranking' | 'bonuses'>
  standings: readonly Standing[]
  /** To come, in any order. */
  matches: readonly SeedMatch[]
  seasons: number
  seed: number
  /** Whose matches are looked into. */
  us?: string
}

export interface TeamSeed {
  team: string
  /** Expected final rank, from 1, and its standard error by the draws and seasons. */
  expected: number
  error: number
  /** Chance of each rank, from the first. */
  ranks: number[]
}

/** Places gained in expected rank, and their standard error. */
export interface Places {
  places: number
  error: number
}

export interface BonusWorth {
  bonus: string
  /** How often the alliance reaches it. */
  chance: number
  /** With it instead of without, all else equal. */
  worth: Places
  /** One percentage point of its chance is worth so many of the win's; null where winning brings no places. */
  perWin: number | null
}

/** What a match to come is worth to us. */
export interface MatchWorth {
  match: string
  /** Chances of ours. */
  win: number
  tie: number
  /** Winning instead of losing, bonuses as they come. */
  worth: Places
  bonuses: BonusWorth[]
}

export interface SeedsReport {
  seasons: number
  seed: number
  /** By expected rank. */
  teams: TeamSeed[]
  /** In the order of the matches. */
  ours: MatchWorth[]
}
