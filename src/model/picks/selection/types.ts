/** How alliances of the playoffs are formed. What is said of common practice has no published source; the rules of the event decide. */
export interface SelectionRules {
  alliances: number
  /** Robots of an alliance, its captain among them: each invites one less. */
  size: number
  /** Later rounds go back and forth. Else each round begins with the first alliance. The first round always does. */
  serpentine: boolean
  /**
   * In the first round a captain further down may be invited; those below it then move up, and the best seeded team that is
   * free becomes the last captain. Common practice.
   */
  captainsInvitable: boolean
  /**
   * A team that declined is not invited again. 'captain': it may still be or become a captain, which is common practice;
   * 'out': it may not become one, though whoever is captain when declining stays it.
   */
  afterDeclining: 'captain' | 'out'
}

/** What was called out, in its order. Undoing is leaving the last one out. */
export type SelectionStep =
  /** Invited by the alliance whose turn it is, and accepted. */
  | { kind: 'accepts'; team: string }
  | { kind: 'declines'; team: string }
  /** Is not there, or can not play: neither captain nor invited. */
  | { kind: 'withdraws'; team: string }
  /** After the selection: a team that was left joins an alliance whose robot can not play. */
  | { kind: 'joins'; team: string; alliance: number }

export interface SelectionAlliance {
  /** From 1. */
  number: number
  /** Null where no team is left for it. */
  captain: string | null
  /** In the order in which they accepted, without the captain. */
  partners: readonly string[]
  /** Its captain has had a turn, so that nobody moves up into its place any more. */
  settled: boolean
}

export interface Turn {
  /** Number of the alliance. */
  alliance: number
  /** From 1. */
  round: number
}

export interface SelectionState {
  rules: SelectionRules
  /** All teams, best first. */
  seeds: readonly string[]
  alliances: readonly SelectionAlliance[]
  /** Null when the selection is over. */
  turn: Turn | null
  /** Whoever may be invited now, best seeded first; after the selection those who may join. */
  free: readonly string[]
  /** In the order of declining. */
  declined: readonly string[]
  withdrawn: readonly string[]
}

/**
 * Why a step is not taken. `declined`: it did before. `captain`: captains may not be invited (any more). `taken`: it is in an
 * alliance. `own`: it is the captain whose turn it is. `over` and `running`: of the selection.
 */
export type Refusal =
  | 'unknown'
  | 'declined'
  | 'withdrawn'
  | 'captain'
  | 'taken'
  | 'own'
  | 'over'
  | 'running'
  | 'noAlliance'

export interface RefusedStep {
  /** Its place among the steps. */
  index: number
  step: SelectionStep
  why: Refusal
}
