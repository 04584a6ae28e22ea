import type { Game, Option, Point } from '../documents/types.ts'
import type { Sums } from '../match/tally.ts'
import type { MatchReport } from '../match/types.ts'

export interface BriefingRequest {
  game: Game
  /** Of the event: which number a bonus asks for. */
  level?: string | undefined
  /** By position, as they were seen. Ids are the teams. */
  ours: readonly Option[]
  theirs: readonly Option[]
  seed: number
  /** By which an opponent that somebody stands in the way of takes longer for each trip. */
  slowing: number
}

/**
 * One way for both sides to play the match. Robots by their positions, 0 to 2.
 */
export interface Version {
  /** Of each of ours, which of its ways (`waysOf`). */
  ways: readonly [number, number, number]
  /** Time left (s) at which each of ours goes for its finish; null: as it was seen to; 'never': plays on to the end. */
  calls: readonly [Call, Call, Call]
  /** The opponent that is slowed. */
  slowed?: number
  /** The one of ours that does not come, or that does nothing but stand in the way. */
  absent?: number
  marks?: number
}

export type Call = number | null | 'never'

/** Matches of one version, in their order. */
export interface PlayedVersion {
  /** Our score less theirs. */
  margins: Float64Array
  rankingPoints: Float64Array
  /** Of each match and robot, ours first: which draw of what is believed of it was met. */
  met: Uint16Array
  /** Of each block, where they were asked for. */
  sums: Sums[]
}

/** Plays the matches `from` … `to − 1` of versions, each match with the same luck. `sums`: with everything that a report tells. */
export type PlayVersions = (
  versions: readonly Version[],
  of: { from: number; to: number; sums?: boolean },
) => Promise<PlayedVersion[]>

export interface Mean {
  mean: number
  standardError: number
}

/** What one way is worth against another, match by match on the same luck: chance to win (a tie as half), points of our lead. */
export interface Difference {
  win: Mean
  points: Mean
}

/** What one of ours does. */
export interface Job {
  team: string
  start: string
  sources: string[]
  /** Most pieces first. */
  goals: string[]
  finish: string | null
  /** When to go for its finish. */
  call: RobotCall | null
  /** Its way over the field, in our own coordinates (m). */
  lane: Point[]
}

export interface RobotCall {
  /** Time left (s); null: what follows from it is worth less than playing on. */
  at: number | null
  /** Points of our lead that going three seconds earlier or later than called costs. */
  early3: Mean
  late3: Mean
}

/** A line-up that was played, with what it is worth against the best. */
export interface LineUp {
  /** Of each of ours: its goals, most of its trips first. */
  goals: string[][]
  win: Mean
  /** Null for the best itself. */
  loses: Difference | null
}

/** What slowing an opponent is worth to us. */
export interface Slowing {
  team: string
  gains: Difference
}

/** What to do about the opponent whose slowing is worth most. */
export interface Threat {
  team: string
  /** Its main goal and the pieces that it brings there a match. */
  goal: string | null
  pieces: number
  gains: Difference
  /** Which of ours would stand in its way all match, and what that is worth: its own points are lost. Best first. */
  markers: { team: string; gains: Difference }[]
  /** The one who should, where that is surely worth it. */
  marker: string | null
}

/** Something that would change the plan. */
export type Fact =
  /** One of ours does not come: the other line-up is better then (or not, which is told too). */
  | { kind: 'absent'; team: string; changes: boolean; difference: Difference }
  /** Where a number of a robot lies above or below a value, the other line-up is better. */
  | {
      kind: 'number'
      team: string
      what: Feature
      side: 'above' | 'below'
      value: number
      believed: number
      difference: Mean
    }

/** `pace`: factor on its times against what is expected; the others are chances. */
export type Feature = 'pace' | 'hits' | 'finish'

/** Seconds that one of ours waits at a place. */
export interface Contention {
  place: string
  team: string
  seconds: Mean
}

export interface Briefing {
  replicates: number
  seed: number
  slowing: number
  jobs: Job[]
  opponents: { team: string; goals: string[]; finish: string | null }[]
  report: MatchReport
  /** Of the best and the others that were played longest, best first. */
  lineUps: LineUp[]
  /** Line-ups that were looked at, by the closed form and in matches. */
  considered: { candidates: number; played: number }
  slowings: Slowing[]
  threat: Threat
  contention: Contention[]
  facts: Fact[]
}
