import type { Game, Option, Role } from '../../documents/types.ts'

export interface LineupRequest {
  game: Game
  /** Of the event: which number a bonus asks for. */
  level?: string | undefined
  /** Our robots; the roles of their options are replaced. */
  ours: readonly Option[]
  /** Settings in which the rivals may come: three options each. */
  theirs: readonly (readonly Option[])[]
  /** How likely each setting is, relative to the others; all alike where not given. */
  weights?: readonly number[] | undefined
  /** Roles that each of our robots may take, one where it is settled. */
  roles: readonly (readonly Role[])[]
  seed: number
  objective: 'win' | 'rankingPoints'
}

/** Which of its roles each of our robots takes. */
export type Lineup = readonly [number, number, number]

interface Mean {
  mean: number
  standardError: number
}

export interface LineupValue {
  roles: Role[]
  /** Chance to win, a tie counting half, or expected ranking points. */
  value: Mean
}

export interface LineupReport {
  best: LineupValue
  /** Null where no other line-up plays otherwise. */
  runnerUp: LineupValue | null
  /** What the runner-up loses against the best, by the same luck. */
  loses: Mean | null
  /** The rivals' setting against which the best line-up does worst, by its number. */
  worst: { rival: number; value: number }
  /** Matches of each of the last two. */
  replicates: number
  seed: number
  /** Line-ups in all, and how many of them were played. */
  candidates: number
  simulated: number
}
