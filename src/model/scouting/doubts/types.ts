import type { Game } from '../../documents/types.ts'
import type { Watched } from '../contradictions.ts'
import type { Choice } from '../seen/index.ts'
import type { Alliance, Match, Result } from '../types.ts'

export interface DoubtsRequest {
  game: Game
  matches: readonly Match[]
  results: readonly Result[]
  /** In force, with whom each is about by the schedule as it is now. */
  watched: readonly Watched[]
  choices?: readonly Choice[]
}

/** What is compared: pieces of a goal (autonomous included, as officials count them), or points. */
export type Category = { kind: 'pieces'; goal: string } | { kind: 'autonomous' } | { kind: 'finishes' }

/** What officials counted beside what scouts saw, in one category. `sds`: the difference, in the event's robust standard deviations. */
export interface Evidence {
  category: Category
  official: number
  scouted: number
  sds: number
}

interface About {
  /** Ids of the records that it may be. */
  records: string[]
  /** Robots that they are about. */
  teams: string[]
  /** How far off, in robust standard deviations; of a scout in standard errors of the effect. Doubts come in its order. */
  size: number
}

interface OfSide extends About {
  match: string
  alliance: Alliance
  evidence: Evidence[]
}

/** Why a record is doubted. What each says in words is the screen's business. */
export type Doubt =
  /** Records of a side and its official result are further apart than those of other matches. */
  | ({ kind: 'differs' } & OfSide)
  /** The result fits once two goals of a record are taken for each other. */
  | ({ kind: 'swapped'; scout: string; goals: [string, string] } & OfSide)
  /** The record fits another robot of the match much better than the one that it is about. */
  | ({ kind: 'wrongRobot'; scout: string; fits: string } & OfSide)
  /** Records of one robot in one match are further apart than results and records usually are. */
  | ({ kind: 'disagree'; match: string; alliance: Alliance; goal: string; low: number; high: number } & About)
  /** All records of a scout together: two goals taken for each other, or pieces too few (`perRecord` > 0) or too many at a goal. */
  | ({ kind: 'scout'; scout: string; match: null } & About &
      ({ habit: 'swaps'; goals: [string, string] } | { habit: 'offBy'; goal: string; perRecord: number }))
