import type { RecordCount, ScheduleEdit } from '../../model/event/changes.ts'
import type { StandingResult } from '../../model/scouting/record/index.ts'
import type { Assignment, Match, Result, Seat, Slot } from '../../model/scouting/types.ts'

/** Whose change it is; both null while the server belongs to nobody. */
export interface By {
  person: string | null
  device: string | null
}

export interface StoredMatch {
  match: Match
  /** Counted from 1 with each change of the match. */
  revision: number
  /** ISO 8601. */
  changedAt: string
}

/** The newest state of a match's result. */
export interface StoredResult {
  match: string
  revision: number
  /** ISO 8601. */
  enteredAt: string
  person: string | null
  /** Null: taken back. */
  result: Result | null
}

export type States = { red: Slot['state'][]; blue: Slot['state'][] }

/** A result on its way in. */
export interface ResultEntry {
  match: string
  /** The revision of the result that was looked at; 0: there was none. */
  base: number
  /** The revision of the match that was looked at. */
  matchRevision: number
  /** Null takes it back. */
  result: Result | null
  /** Who was absent or disqualified, by position, where that is said along with the result. */
  states?: States | undefined
}

/** What would bring the schedule back to where it was. */
export interface Undo {
  put: Match[]
  remove: string[]
}

export type ScheduleOutcome = { applied: { mark: string; undo: Undo; touched: number } } | { stale: true }

export type ResultOutcome = { applied: StoredResult[] } | { stale: string[] }

export type AssignOutcome = { applied: { mark: string; assignments: Assignment[] } } | { stale: true }

/** Where an event stands. Each mark is another after every change of what it is of. */
export interface EventMarks {
  /** Of the event's document, whose body this is. */
  revision: number
  body: unknown
  /** Of the document and the schedule. */
  frame: string
  /** Of results, seats, and choices among records. */
  rest: string
  /** Arrival of its newest record; 0: there is none. */
  newest: number
  /** Records that came after the one that was asked about. */
  since: number
}

/** Schedule, results and assignments of a workspace's events. The events themselves are documents. */
export interface EventStore {
  /** Without anything being read whole; null where there is no such event. @param newest arrival of a record after which they are counted */
  marks(event: string, newest: number): Promise<EventMarks | null>
  /** The schedule in the order of play, and its mark, which is another after every change. */
  matches(event: string): Promise<{ matches: StoredMatch[]; mark: string }>
  /** All of an edit, or nothing where the schedule is no longer the one of the mark. */
  edit(event: string, edit: ScheduleEdit & { mark: string; by: By }): Promise<ScheduleOutcome>
  /** The newest state of each result, in no order. */
  results(event: string): Promise<StoredResult[]>
  /** The results that stand, each with the moment since which the match has one: corrections do not move it. */
  standing(event: string): Promise<StandingResult[]>
  /** Every state of a match's result, newest first. */
  resultHistory(event: string, match: string): Promise<StoredResult[]>
  /** All of them, or none where a result or its match was changed since; sent twice, it is answered alike. */
  enter(event: string, entries: readonly ResultEntry[], by: By): Promise<ResultOutcome>
  assignments(event: string): Promise<{ assignments: Assignment[]; mark: string }>
  /** Sets these seats; others stay. */
  assign(event: string, of: { assignments: readonly Assignment[]; mark: string; by: By }): Promise<AssignOutcome>
  /**
   * Gives a seat to a person, and the seat that this person had in the match, if any, to whom the seat belonged. Answers what is
   * so now. Null where there is no such match.
   */
  takeSeat(event: string, of: { match: string; seat: Seat; person: string; by: By }): Promise<Assignment[] | null>
  /** How many observations of each robot there are, by how they were identified. */
  recordCounts(event: string): Promise<RecordCount[]>
}
