/**
 * What is known of an event: who plays when, what the officials counted, and what scouts saw. Times are seconds of the match's
 * clock from its start, unless they are moments (ISO 8601). Teams, scouts, devices and drivers are string ids.
 */

export const phases = ['practice', 'qualification', 'playoff'] as const
export type Phase = (typeof phases)[number]

export const alliances = ['red', 'blue'] as const
export type Alliance = (typeof alliances)[number]

export type Position = 1 | 2 | 3

export interface EventRecord {
  format: 1
  id: string
  name: string
  /** Id of the game; its newest revision counts. */
  game: string
  level?: string
  teams: { team: string; name?: string }[]
  playoff?: { format: 'double' | 'bestOf'; games?: number; alliances: number; size: number }
  /** A date (ISO 8601). */
  startsOn?: string
  /** After so many own matches a match counts half in estimates; missing: all count alike. */
  halfLife?: number
  /** A stored earlier event whose matches count as own ones at a discount; `changed`: teams whose robot was changed since. */
  earlier?: { event: string; discount: number; changed?: string[] }
  /** What the team takes from the event, a line each. */
  lessons?: string
  /** Our own team at the event. */
  own?: string
  /** Who drove a team's robot in a match, where that is known: scouts can not see it. */
  drivers?: MatchDriver[]
}

export interface MatchDriver {
  match: string
  team: string
  driver: string
}

export const slotStates = ['expected', 'played', 'absent', 'disqualified'] as const

/** A robot's place in a match. `counts` false: a surrogate, whose ranking points are not counted. */
export interface Slot {
  team: string
  position?: Position
  counts: boolean
  state: (typeof slotStates)[number]
}

export type Side = [Slot, Slot, Slot]

export interface Match {
  id: string
  phase: Phase
  number: number
  /** 1 for the first play; a replay has the next number and names in `voids` the match whose result no longer counts. */
  play: number
  voids?: string
  time?: string
  red: Side
  blue: Side
}

export interface ResultSide {
  /** `total` includes points from fouls; `goals` are those of teleop. */
  points: { total: number; autonomous?: number; goals?: number; finishes?: number; fromFouls?: number }
  /** Ids of the bonuses that were reached. */
  bonuses?: string[]
  /** Pieces by goal, those of autonomous included. */
  pieces?: { [goal: string]: number }
}

export interface Result {
  match: string
  red: ResultSide
  blue: ResultSide
}

export const happenings = [
  'collected',
  'scored',
  'missed',
  'dropped',
  'passed',
  'unseen',
  'seen',
  'stopped',
  'running',
  'defending',
  'free',
  'defended',
  'released',
  'left',
] as const

/** One thing that a robot did. `unseen` until `seen`, `stopped` until `running`, `defending` until `free`, `defended` until `released`; `left`: it departs for its finish. */
export interface Happening {
  /** Seconds since the match's start. */
  elapsed: number
  what: (typeof happenings)[number]
  goal?: string
  source?: string
  n?: number
  /** Whether `n` was counted or estimated ('about 12'). */
  counted?: 'each' | 'estimate'
  /** Where, in the field's coordinates (m). */
  x?: number
  y?: number
}

export interface Observation {
  format: 1
  /** Made on the phone (UUID, version 7). */
  id: string
  match: string | null
  team: string
  subject: 'robot' | 'human'
  origin: 'live' | 'video' | 'practice'
  scout: string
  device: string
  /** Counts the records of a device. */
  sequence: number
  /** Id of the observation that this one corrects. */
  replaces?: string
  /** Revision of the game. */
  game: number
  identifiedBy: 'number' | 'position'
  absent?: boolean
  startSpot?: string
  leftStart?: boolean
  routine?: string
  driver?: string
  robotRevision?: number
  departedAt?: number
  timeline?: Happening[]
  counts?: { goal: string; period: 'auto' | 'teleop'; scored: number; missed: number }[]
  finish?: { attempted: string | null; achieved: string | null }
  defence?: { playedSeconds: number; received: 'none' | 'some' | 'heavy' }
  lostSeconds?: number
  stoppedAt?: number
  fouls?: { minor: number; major: number }
  note?: string
}

/** What a team says of itself. */
export interface PitVisit {
  team: string
  /** When (ISO 8601). */
  at: string
  claims: {
    /** Pieces per match by goal. */
    goals?: { [goal: string]: number }
    /** Seconds. */
    cycle?: number
    finish?: string
    routines?: string[]
    size?: string
    mass?: number
  }
  /** Ids of photos. */
  photos: string[]
  note?: string
}

/** An expert's order of robots of one match, best first. */
export interface Ranking {
  match: string
  scout: string
  by: 'driving' | 'defence'
  order: string[]
}

/** A robot was changed after a match: what was seen before says less. `afterMatch` null: before its first. */
export interface Change {
  team: string
  afterMatch: string | null
  note?: string
}

/** A photo of a pit visit: at most 200 kB. */
export interface Photo {
  id: string
  type: 'image/jpeg' | 'image/webp' | 'image/png'
  /** Base64. */
  data: string
}

export const recordKinds = ['observation', 'visit', 'ranking', 'change', 'photo', 'drill', 'withdrawal'] as const
export type RecordKind = (typeof recordKinds)[number]

export interface RecordDocuments {
  observation: Observation
  visit: PitVisit
  ranking: Ranking
  change: Change
  photo: Photo
  /** A rehearsal's record: it shows that the phone's way to the server works, and is counted nowhere else. */
  drill: { drill: string }
  /** Takes the place of a record, and says nothing: a lead took it out again. It counts only where the server made it. */
  withdrawal: { record: string }
}

/** A place in a match, by which a record stays tied to the schedule when teams in it are corrected. */
export interface Seat {
  alliance: Alliance
  position: Position
}

/**
 * What a phone keeps in its outbox and sends: a record with what belongs to its way. Append-only: a correction is a further
 * row. `id` is the document's own where it has one. `made` is the phone's clock, for people only; nothing is ordered by it.
 */
export type Row = {
  [Kind in RecordKind]: {
    id: string
    kind: Kind
    event: string
    device: string
    sequence: number
    scout: string
    made: string
    /** Where the record belongs to a place rather than a number, and where the scout sat. */
    seat?: Seat
    /** Of a correction. */
    reason?: string
    body: RecordDocuments[Kind]
  }
}[RecordKind]

/**
 * What became of a row. held: committed and synced to disk, now or before (`again`). quarantined: the id is taken by other
 * content; both are kept, a lead decides. refused: it can not be read, the phone keeps it and shows why.
 */
export type RowAnswer =
  | { id: string; outcome: 'held'; again: boolean }
  | { id: string; outcome: 'quarantined'; why: string }
  | { id: string; outcome: 'refused'; why: string }

/** How much of a device the server holds, to be compared with what the device counts. */
export interface Receipt {
  held: number
  quarantined: number
  /** ISO 8601. */
  at: string
}

/** Who is to watch whom. `person`: whose seat it is now; null: nobody’s. */
export interface Assignment {
  match: string
  seat: Seat
  person: string | null
}
