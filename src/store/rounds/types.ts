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
  /** It was opened with a key, without which closing it takes a further yes. */
  keyed: boolean
  /** It was closed without that key. */
  closedAnyway: boolean
  /** ISO 8601: when it came in from a file; null where it was held here. */
  broughtAt: string | null
}

/** A closed round as a file keeps it: without devices, so that it does not say who guessed what. */
export type KeptRound = Omit<RoundSubject, 'sheet'> & {
  code: string
  openedAt: string
  closedAt: string
  guesses: Guess[]
}

/** What became of the rounds of a file. */
export type Brought = { added: number; already: number } | { refused: 'tooManyRounds' }

export type Given =
  | { given: { count: number; corrected: boolean } }
  | { refused: 'missing' | 'closed' | 'tooManyDevices' | 'tooManyCorrections' }

/** Rounds of one workspace. Rows are added only: a correction is a further row, closing is one as well; removing hides. */
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
  /**
   * Closed for good; closing it again changes nothing. Null where there is no such round. `anyway`: also without the key
   * that it was opened with, which is kept beside the round.
   */
  close(
    code: string,
    by?: { key?: string | undefined; anyway?: boolean },
  ): Promise<Round | { refused: 'otherKey' } | null>
  /** Hidden everywhere, as if there were none, with its guesses kept; `undo` brings it back. False where there is no such round. */
  remove(code: string, undo?: boolean): Promise<boolean>
  /** All closed rounds of a sheet with their guesses, oldest first. */
  keep(sheet: string): Promise<KeptRound[]>
  /** Rounds of a file, all or none. One that is here already is not doubled; another with the same code gets a new one. */
  bring(sheet: string, rounds: readonly KeptRound[]): Promise<Brought>
  /** The newest guess of each device by size, without the devices. Null while the round is open, and where there is none. */
  guesses(code: string): Promise<Guess[] | null>
}

/** More would be a mistake or mischief: far above a team and its parents. */
export const mostDevices = 200
export const mostCorrections = 50
export const mostRounds = 200
