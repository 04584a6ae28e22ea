import type { Reference } from './records.ts'
import type { Duration } from './types.ts'

/** What we do not know about the level of a time (s): low, likely and high. Not the same as variation from trip to trip. */
export interface LevelBelief {
  low: number
  likely: number
  high: number
}

/** One leg of a way to play on the first Saturday: its whole time, driving and repeated tries included. */
export interface QuickLeg {
  time: Extract<Duration, { kind: 'fixed' | 'range' }>
  /** From a round of guesses; null where nobody but the writer was asked. */
  belief: LevelBelief | null
}

export type QuickLegName = 'collect' | 'score' | 'finish'

/** A way to play with one number per leg, the same wherever the leg begins. */
export interface QuickWay {
  id: string
  name: string
  sources: string[]
  goals: string[]
  finish: string | null
  /** Pieces per trip. */
  load: number
  collect: QuickLeg
  /** `success`: chance that a piece counts. */
  score: QuickLeg & { success: number }
  /** Kept where there is no finish, so that choosing one again loses nothing. */
  finishing: QuickLeg & { success: number }
  /** Seconds of holding that one piece buys, at goals that pay for holding. */
  holdSeconds: number
  /** Points a match that are added by hand: autonomous, bonuses, what no rule of the game says. */
  extra: number
}

/** How strongly the ways are played: factors on all their times and on all their chances of success. */
export interface Strength {
  times: number
  success: number
}

export type StrengthName = 'weak' | 'middling' | 'strong'

/** Ways to play side by side before anything is designed. */
export interface QuickSheetRecord {
  format: 1
  id: string
  name: string
  game: Reference
  strengths: { [name in StrengthName]: Strength }
  ways: QuickWay[]
}

/** A named revision of a game: the rules as one sentence of them may be read. */
export interface ReadingRecord {
  format: 1
  id: string
  /** 'If robots may wait there'. */
  name: string
  /** The rule that is read, by its number in the manual. */
  rule: string
  game: Reference
}
