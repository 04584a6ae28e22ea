import type { CompareReport, Input } from '../compare/types.ts'
import type { Objective } from '../match/stated/types.ts'
import type { Duration, Game, Option, Robot } from './types.ts'

/** A stored document at one of its revisions. */
export interface Reference {
  id: string
  revision: number
}

/** A robot kept for a game. The document's id and name are the robot's own. */
export interface DesignRecord {
  format: 1
  game: string
  robot: Robot
  /** Of a copy that was written back from the field: where its numbers come from. */
  fromField?: FromField
}

/** A design with stages moved until its legs take as long as they did on the field. */
export interface FromField {
  /** The design that it is a copy of. */
  design: Reference
  /** Id of the event whose records it was. */
  event: string
  team: string
  matches: number
  practice: number
  trips: number
  /** Which stage of which leg was moved, and by how much (s). Stage null: the leg's own time. */
  shifts: { leg: OverriddenLeg; stage: string | null; seconds: number }[]
}

/** A way to play a design. The robot is looked up, so that an edit of the design reaches all its options. */
export interface OptionRecord {
  format: 1
  game: string
  design: string
  option: Omit<Option, 'robot'>
}

export type OverriddenLeg =
  | { kind: 'collect'; source: string }
  | { kind: 'score'; goal: string; entry: number }
  | { kind: 'finish'; finish: string }

/** A number that somebody sets in place of the computed one, because they know better. */
export type Override = {
  id: string
  reason: string
  who: string
  /** A date, or a date with its time (ISO 8601). */
  on: string
} & (
  | {
      /** Expected points of an option: all its outcomes are moved by as much. */
      kind: 'points'
      option: string
      points: number
    }
  | {
      /** The whole time of a leg of a robot, driving included, wherever it starts. */
      kind: 'leg'
      robot: string
      leg: OverriddenLeg
      whole: Duration
    }
  | {
      /** Pieces that an option places on a goal in teleop, on average: all its outcomes are moved by what the rest is worth. */
      kind: 'pieces'
      option: string
      goal: string
      pieces: number
    }
  | {
      /** Expected points of an option's autonomous routine: all its outcomes are moved by as much. */
      kind: 'auto'
      option: string
      points: number
    }
  | {
      /** The drive of a robot between two starts or spots, from rest to rest and both ways, without its pace (s). */
      kind: 'travel'
      robot: string
      from: string
      to: string
      seconds: number
    }
  | {
      /** The chance that a robot's finish holds. */
      kind: 'success'
      robot: string
      finish: string
      probability: number
    }
)

/** With what had been computed where the override stands, or the design says: points, seconds on average, or a chance. */
export type KeptOverride = Override & { computed: number }

/** A way to play with its design, each at a revision. */
export interface OptionReference {
  option: Reference
  design: Reference
}

/** Who plays with and against the options, how often, and at which level of the event; null where no bonus asks for one. */
export interface FieldReferences {
  partners: OptionReference[]
  opponents: OptionReference[]
  level: string | null
  replicates: number
}

/** Options side by side over the same unknowns, and the revisions that the stored result was made from. */
export interface ComparisonRecord {
  format: 1
  id: string
  name: string
  question: string
  game: Reference
  options: OptionReference[]
  inputs: Input[]
  /** Id of the input whose break-even is shown. */
  breakEven: string | null
  seed: number
  /** What options are judged by; points where nothing is said, as in comparisons made before there was a choice. */
  objective?: Objective
  /** Kept when points are judged by again, so that going back loses nothing. */
  field?: FieldReferences
  overrides?: Override[]
  result: CompareReport | null
}

/** Who played with and against the options, as they were. */
export interface StatedField {
  partners: Option[]
  opponents: Option[]
  level: string | null
  replicates: number
}

/**
 * What an option's stored air does in the plan: the time left at which the working pressure is lost (s, null: never), and the
 * points a match that this costs. `possible` false: the air can not be stored as it is given.
 */
export interface KeptAir {
  option: string
  possible: boolean
  lostAt: number | null
  cost: number
}

/** A decision that can be defended: what was asked, assumed, found and agreed, with a snapshot of the inputs. */
export interface DecisionRecord {
  format: 1
  id: string
  name: string
  question: string
  decidedOn: string
  comparison: Reference
  /** Id of the option that was chosen. */
  chosen: string
  assumptions: { text: string; source: string }[]
  result: string
  wouldChange: string[]
  measureNext: string[]
  /** `who`: a name or nickname of whoever objected. */
  objections: { who?: string; text: string; answer: string }[]
  /** `on`: a date, or a date with its time (ISO 8601). */
  agreed: { who: string; on: string }[]
  checkAtEvent: string
  /** What will be looked at, which value is expected, and when to look. */
  checks?: { quantity: string; expected: string; when: string }[]
  snapshot: {
    game: Game
    /** They have their overrides in them. */
    options: Option[]
    inputs: Input[]
    result: CompareReport
    /** Points where nothing is said. */
    objective?: Objective
    field?: StatedField
    overrides?: KeptOverride[]
    /** Of each option with stored air; kept, so that a page has it at once and on paper. Missing in older records. */
    air?: KeptAir[]
    /** Name of the trade-off; missing in older records. */
    tradeOff?: string
  }
}

export type DocumentKind =
  | 'game'
  | 'design'
  | 'option'
  | 'comparison'
  | 'decision'
  | 'quickSheet'
  | 'reading'
  | 'timing'
  | 'part'
  | 'event'
