import { inOrder } from '../event/order.ts'
import { seatOf, slotsOf } from '../event/seats.ts'
import type { Assignment, Match, Observation, Seat } from './types.ts'

/** received: somebody's record is here. expected: the match is still to come. late: it was played, and whoever watched has not sent. unwatched: nobody was to watch. */
export type SeatState = 'received' | 'expected' | 'late' | 'unwatched'

export interface SeatArrivals {
  seat: Seat
  team: string
  /** Who was to watch. */
  person: string | null
  state: SeatState
  /** Ids of the records that are in force. */
  records: string[]
}

export interface MatchArrivals {
  match: string
  played: boolean
  seats: SeatArrivals[]
}

/** What a lead has to know of a record here. */
export interface Arrived {
  observation: Observation
  team: string
}

/**
 * Who was to watch whom, and what has arrived. A match counts as played when the officials have counted it, or when something
 * of a later one is here.
 *
 * @param records observations in force
 * @param counted ids of matches with an official result
 */
export function arrivals(of: {
  matches: readonly Match[]
  assignments: readonly Assignment[]
  records: readonly Arrived[]
  counted: ReadonlySet<string>
}): MatchArrivals[] {
  const matches = [...of.matches].sort(inOrder)
  const robots = of.records.filter(({ observation }) => observation.subject === 'robot')
  const seen = new Set(robots.map(({ observation }) => observation.match))
  const last = matches.findLastIndex(({ id }) => seen.has(id) || of.counted.has(id))
  return matches.map((match, index) => {
    const played = index < last || of.counted.has(match.id) || seen.has(match.id)
    const here = robots.filter(({ observation, team }) => observation.match === match.id && seatOf(match, team))
    const seats = slotsOf(match).map(({ seat, slot: { team } }): SeatArrivals => {
      const records = here.filter((record) => record.team === team).map(({ observation }) => observation.id)
      const assigned = of.assignments.find(
        ({ match: id, seat: { alliance, position } }) =>
          id === match.id && alliance === seat.alliance && position === seat.position,
      )
      const person = assigned?.person ?? null
      const missing = person === null ? 'unwatched' : played ? 'late' : 'expected'
      return { seat, team, person, state: records.length > 0 ? 'received' : missing, records }
    })
    return { match: match.id, played, seats }
  })
}
