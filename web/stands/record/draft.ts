import type { Alliance, Happening, Observation, Position } from '../../../src/model/scouting/types.ts'

/** One press of the thumb. `elapsed` is by the match's clock as it ran then, before it was shifted (s). */
export interface Tap extends Happening {
  /** Of a record that only counts: the period in which it was counted. */
  period?: 'auto' | 'teleop'
}

/** A clock that a closed page does not stop: what it had shown when it was last started or stopped, and since when it runs. */
export interface Running {
  /** Seconds shown at `since`, or for as long as it stands. */
  base: number
  /** ms since 1970; null while it stands. */
  since: number | null
  /** 1, or how fast a video is played. */
  speed: number
  /** Seconds by which the start was tapped too late (positive) or too early: moves the taps before as well. */
  shift: number
}

/** Whom a record is about. */
export interface About {
  match: string | null
  seat: { alliance: Alliance; position: Position } | null
  team: string
  identifiedBy: Observation['identifiedBy']
  subject: Observation['subject']
  origin: Observation['origin']
  /** Taps in their order of time, or only how many. */
  mode: 'timeline' | 'counts'
  driver?: string
  robotRevision?: number
}

/** What is asked beside the taps. Undefined: not said. */
export interface Said {
  absent?: boolean
  startSpot?: string
  leftStart?: boolean
  routine?: string
  attempted?: string | null
  achieved?: string | null
  minor: number
  major: number
  note: string
  /** Of a record that only counts (s). */
  lostSeconds?: number
  defending?: number
  defended?: 'none' | 'some' | 'heavy'
}

/** A record that is being made. It lives on the phone, with its taps beside it. */
export interface Draft {
  id: string
  event: string
  scout: string
  /** With which revision of the game it was begun: its form stays that one. */
  game: { id: string; revision: number }
  about: About
  clock: Running
  /** Whether the match has begun, and what is on the screen. */
  step: 'before' | 'running' | 'check' | 'saved'
  said: Said
  /** ms since 1970. */
  begun: number
  replaces?: string
  reason?: string
}

export const standing: Running = { base: 0, since: null, speed: 1, shift: 0 }

export const nothingSaid: Said = { minor: 0, major: 0, note: '' }

export const freshDraft = (of: Pick<Draft, 'id' | 'event' | 'scout' | 'game' | 'about' | 'begun'>): Draft => ({
  ...of,
  clock: standing,
  step: 'before',
  said: nothingSaid,
})
