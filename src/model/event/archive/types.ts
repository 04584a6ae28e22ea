import type { Game } from '../../documents/types.ts'
import type { KeptLine } from '../../picks/protocol/types.ts'
import type { KeptForecast } from '../../scouting/record/index.ts'
import type { Assignment, EventRecord, Match, Result, Row } from '../../scouting/types.ts'
import type { MatchName } from '../order.ts'

/** A match as it is kept, taken out of the schedule or not. */
export interface KeptMatch {
  match: Match
  /** Counted from 1 with each change. */
  revision: number
  /** ISO 8601, like all moments here. */
  changedAt: string
  removed: boolean
}

/** One state of a match's result; all of them are kept. */
export interface KeptResult {
  match: string
  revision: number
  enteredAt: string
  person: string | null
  /** Null: taken back. */
  result: Result | null
}

export interface KeptAssignment extends Assignment {
  since: string
}

/** A record with when and by whom it came in. */
export interface KeptRecord {
  row: Row
  /** SHA-256 of the row's canonical JSON. */
  hash: string
  receivedAt: string
  /** Id of the record that it takes the place of. */
  replaces: string | null
  person: string | null
}

/** A row that was kept apart, and what became of it. */
export interface KeptApart {
  row: Row
  hash: string
  reason: 'otherContent' | 'unknownEvent'
  receivedAt: string
  person: string | null
  resolution: 'kept' | 'replaced' | 'setAside' | null
  resolvedAt: string | null
  resolvedBy: string | null
}

/** Which of several records of a robot counts; the newest of a robot in a match is in force. */
export interface KeptChoice {
  match: string
  team: string
  record: string | null
  person: string | null
  reason: string | null
  chosenAt: string
}

export interface KeptDrill {
  id: string
  startedAt: string
  endedAt: string | null
  startedBy: string | null
}

/** A revision of a game. When it was saved is no part of it, so that the same rules are the same on every server. */
export interface KeptRules {
  revision: number
  body: Game
}

export interface KeptEvent {
  revision: number
  body: EventRecord
  note: string | null
  savedAt: string
}

/** Everything of one event. Records, rows apart and choices stand in the order in which they came. */
export interface EventContents {
  /** All revisions, oldest first; the last is in force. */
  event: KeptEvent[]
  /** Of the game: the revisions that records name, and the newest; oldest first. */
  rules: KeptRules[]
  matches: KeptMatch[]
  results: KeptResult[]
  assignments: KeptAssignment[]
  records: KeptRecord[]
  apart: KeptApart[]
  choices: KeptChoice[]
  drills: KeptDrill[]
  /** As they were shown before their matches, oldest first. */
  forecasts: KeptForecast[]
  /** What was called out at its selection, and our notes to it, in the order in which they were written. */
  selection: KeptLine[]
  /** What those are called whose ids stand anywhere in it. */
  people: { id: string; nickname: string }[]
}

/** Parts that archives have had only for some time. */
type LaterPart = 'forecasts' | 'selection'

/** As a file has it: an event without forecasts or a selection is the same file, with the same hash, as before there were any. */
export type WrittenContents = Omit<EventContents, LaterPart> & {
  [part in LaterPart]?: EventContents[part] | undefined
}

export const contentParts = [
  'event',
  'rules',
  'matches',
  'results',
  'assignments',
  'records',
  'apart',
  'choices',
  'drills',
  'forecasts',
  'selection',
  'people',
] as const
export type ContentPart = (typeof contentParts)[number]

/** What is here of a part already, and what a file would add to it. */
export interface PartReport {
  part: ContentPart
  added: number
  already: number
}

/** Something that is here already and says something else than the file: it stays as it is. */
export interface ContentDifference {
  part: ContentPart
  /** Id of the match, the person, the drill, the event or the game. */
  id: string
  /** What people call the match by. */
  match?: MatchName
  /** Further: the revision of the game, the seat, the team, or what somebody is called in the file. */
  detail?: string
}

/** What bringing a file in changes, or would change. */
export interface BringReport {
  /** Whether the event is new here. */
  fresh: boolean
  /** Whether it had been removed here: it is asked to be here, and comes back. */
  back: boolean
  parts: PartReport[]
  /** Ids of records whose ids are taken by other content: both are kept, a lead decides. */
  conflicts: string[]
  differs: ContentDifference[]
}
