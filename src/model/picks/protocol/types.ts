import type { Refusal, SelectionRules, SelectionStep } from '../selection/index.ts'

/** What a line is about. Who writes one names the newest line of its topic that was seen. */
export const topics = ['selection', 'aside', 'order'] as const
export type Topic = (typeof topics)[number]

/** A line of an event's log of its selection. Lines are added, never changed: undoing is a line of its own. */
export type PickLine =
  /** A selection begins, with the rules that were announced and all teams, best seeded first. What was called out before counts no more. */
  | { kind: 'begins'; rules: SelectionRules; seeds: string[] }
  | { kind: 'called'; step: SelectionStep }
  /** Takes back the last line that is in force. */
  | { kind: 'undoes'; line: string }
  /** We do not invite a team, for a reason that no number knows; null: we may again. */
  | { kind: 'aside'; team: string; reason: string | null }
  /** Our own order by hand, best first; the teams that it does not name follow as computed. None: the computed order. */
  | { kind: 'order'; teams: string[] }

export interface KeptLine {
  /** A UUID made up by whoever writes it, so that it can be sent twice. */
  id: string
  line: PickLine
  /** ISO 8601, by the server's clock. */
  at: string
  /** Id of the person; null while the server belongs to nobody. */
  person: string | null
}

/** Why a line is not taken. */
export type LineRefusal =
  /** Nothing is announced yet. */
  | { why: 'notBegun' }
  /** It is not the last line in force that is to be undone. */
  | { why: 'notLast' }
  | { why: 'seedTwice'; team: string }
  | { why: 'refused'; team: string; reason: Refusal }
