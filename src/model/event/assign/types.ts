import type { Assignment } from '../../scouting/types.ts'
import type { Breaks } from './stints.ts'

export interface DealRequest extends Breaks {
  /**
   * In the order of play. `pause`: before it there is time enough for everybody to rest. `closed`: nobody is added to it, as when
   * it is over; who watched it counts.
   */
  matches: readonly { id: string; pause: boolean; closed?: boolean }[]
  /** Ids of those who watch; their order decides between equals. */
  people: readonly string[]
  /** Seats that stay as they are. They count as load, and for the breaks. */
  kept?: readonly Assignment[]
}

export interface Load {
  person: string
  matches: number
  /** Most matches between two breaks. */
  longest: number
}

export interface Dealt {
  assignments: Assignment[]
  loads: Load[]
  /** Who is to watch a match beyond the longest stretch, because nobody rested was left. */
  broken: { person: string; match: string }[]
  /** Seats of open matches that nobody watches. */
  empty: number
  /** So many people are enough to watch all six robots with these breaks. */
  enough: number
}
