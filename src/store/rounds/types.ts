import type { QuickLegName } from '../../model/documents/quickSheet.ts'
import type { Guess } from '../../model/sheet/pool.ts'

/** What is guessed: a leg of a way to play on a quick sheet, in words for whoever guesses. */
export interface RoundSubject {
  sheet: string
  way: string
  leg: QuickLegName
  about: RoundWords
}

export interface RoundWords {
  way: string
  /** Names of the sources, goals or finish that the leg leads to. */
  places: string[]
  load: number
}

/** A round of blind guesses. How many guessed is known at once, what they guessed only when it is closed. */
export interface Round extends RoundSubject {
  code: string
  /** ISO 8601. */
  openedAt: string
  closedAt: string | null
  /** Devices that have given a guess. */
  count: number
  /** Devices that have opened it to guess, those that have guessed among them. */
  arrived: number
  /** Only the browser that opened it can close it. */
  keyed: boolean
}

export type Given =
  | { given: { count: number; corrected: boolean } }
  | { refused: 'missing' | 'closed' | 'tooManyDevices' | 'tooManyCorrections' }

/** Rounds of one workspace. Rows are added only: a correction is a further row, closing is one as well. */
export interface RoundStore {
  /** Null where the sheet has as many rounds as it may have. Who closes it must bring the same key, if there is one. */
  open(subject: RoundSubject, closingKey?: string): Promise<Round | null>
  get(code: string): Promise<Round | null>
  /** Newest first. */
  list(sheet: string): Promise<Round[]>
  /** One guess per device; a later one replaces it until the round is closed. */
  give(code: string, device: string, guess: Guess): Promise<Given>
  /** A device has opened the round; more than may guess are not counted. Null where there is no such round. */
  arrive(code: string, device: string): Promise<Round | null>
  /** Closed for good; closing it again changes nothing. Null where there is no such round. */
  close(code: string, closingKey?: string): Promise<Round | { refused: 'otherKey' } | null>
  /** The newest guess of each device by size, without the devices. Null while the round is open, and where there is none. */
  guesses(code: string): Promise<Guess[] | null>
}

/** More would be a mistake or mischief: far above a team and its parents. */
export const mostDevices = 200
export const mostCorrections = 50
export const mostRounds = 200
