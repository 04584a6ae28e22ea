import type { CompareReport, Input } from '../compare/types.ts'
import type { Game, Option, Robot } from './types.ts'

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
}

/** A way to play a design. The robot is looked up, so that an edit of the design reaches all its options. */
export interface OptionRecord {
  format: 1
  game: string
  design: string
  option: Omit<Option, 'robot'>
}

/** Options side by side over the same unknowns, and the revisions that the stored result was made from. */
export interface ComparisonRecord {
  format: 1
  id: string
  name: string
  question: string
  game: Reference
  options: { option: Reference; design: Reference }[]
  inputs: Input[]
  /** Id of the input whose break-even is shown. */
  breakEven: string | null
  seed: number
  result: CompareReport | null
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
  snapshot: { game: Game; options: Option[]; inputs: Input[]; result: CompareReport }
}

export type DocumentKind = 'game' | 'design' | 'option' | 'comparison' | 'decision' | 'quickSheet' | 'reading'
