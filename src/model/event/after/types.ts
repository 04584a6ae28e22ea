import type { Estimate } from '../../scouting/estimates/index.ts'
import type { FieldLeg } from '../../scouting/field/index.ts'
import type { ForecastState } from '../../scouting/record/index.ts'
import type { Alliance } from '../../scouting/types.ts'

/** A match of ours: what was said of it before, and what became of it. */
export interface AfterMatch {
  match: string
  alliance: Alliance
  /** The forecast that counts; `win`: chance of ours, a tie half. Scores in points. Null: none was kept. */
  forecast: { win: number; mean: number; interval80: [number, number] } | null
  state: ForecastState | 'notForecast'
  /** Official points of ours and theirs; null while there are none. */
  result: { ours: number; theirs: number } | null
}

/** How forecasts of our matches did, from those that count. */
export interface AfterForecasts {
  matches: number
  /** Wins expected and come, a tie as half; and where the number of wins lies with 80 % if the chances hold. */
  expected: number
  came: number
  range80: [number, number]
  /** Our score seen less forecast (points): mean and its standard error, null with fewer than two matches. */
  difference: { mean: number; error: number | null }
  /** How often our score came to lie where it was to with 80 %. */
  inside80: number
}

/** Ways in which a robot loses time of teleop. */
export const losses = ['slower', 'stopped', 'defended', 'standing'] as const
export type Loss = (typeof losses)[number]

/** Where our robot lost its time, in seconds of teleop a match that it was watched in. */
export interface AfterLoss {
  /** slower: trips took longer than by the design (below 0: less long). stopped: for good. standing: stopped and ran again, or counted as lost. defended: was defended against. */
  kind: Loss
  seconds: number
  /** Matches in which it happened. */
  matches: number
}

/** Tries that missed at a goal in teleop. */
export interface AfterMisses {
  goal: string
  tried: number
  missed: number
}

/** What a decision said of the way to play that was chosen. */
export interface AfterDecision {
  id: string
  name: string
  decidedOn: string
  /** Name of the way to play that was chosen, and whether its robot is the design that is looked at. */
  chosen: string
  ofDesign: boolean
  /** Points of a match that were expected. */
  expected: { mean: number; p10: number; p90: number }
  /** What was to be looked at on the field, in the words of the record. */
  checks: { quantity: string; expected: string; when: string }[]
  checkAtEvent: string
  wouldChange: string[]
}

export interface AfterChange {
  /** The robot was changed after this match; null: before the first. */
  afterMatch: string | null
  note: string | null
}

/** A question that the evidence asks, with its numbers; no order, and none where there is none. */
export type AfterQuestion =
  | { code: 'slowLeg'; leg: FieldLeg['leg']; seconds: number; trips: number }
  | { code: 'slowerTrips'; seconds: number; trips: number }
  | { code: 'quickerTrips'; seconds: number; trips: number }
  | { code: 'stopped'; matches: number; of: number }
  | { code: 'absent'; matches: number }
  | { code: 'standing'; seconds: number; matches: number }
  | { code: 'defended'; seconds: number; matches: number }
  | { code: 'misses'; goal: string; missed: number; tried: number }
  | { code: 'belowDecision'; decision: string; expected: number; seen: number }
  | { code: 'aboveDecision'; decision: string; expected: number; seen: number }
  | { code: 'fewerWins'; expected: number; came: number }
  | { code: 'moreWins'; expected: number; came: number }
  | { code: 'scoreOff'; points: number; matches: number }

export interface AfterReport {
  team: string
  /** Null: no match of it counts yet. */
  ranking: { rank: number; of: number; played: number; won: number; tied: number; lost: number } | null
  matches: AfterMatch[]
  forecasts: AfterForecasts | null
  /** Matches of ours in which its robot was watched, those in which it did not come apart. */
  watched: number
  absent: number
  losses: AfterLoss[]
  misses: AfterMisses[]
  /** Against the design, in matches; null where none was named or nothing could be compared. */
  field: {
    trips: number
    model: number
    seen: number
    difference: number
    interval95: [number, number] | null
    legs: { leg: FieldLeg['leg']; difference: number; share: number; trips: number }[]
  } | null
  /** Expected points of a match by what was seen: goals of teleop, finish and autonomous. */
  points: Estimate | null
  decisions: AfterDecision[]
  changes: AfterChange[]
  /** What was wrong first. */
  questions: AfterQuestion[]
}
