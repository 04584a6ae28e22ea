import { slotAt } from '../event/seats.ts'
import type { Match, Row } from './types.ts'

/**
 * Whom a record is about. A robot that was known by its number stays who it was; one that was known by its place is the
 * team that the schedule now has there, so that a corrected schedule moves the record without changing it. Runs outside of
 * a match and matches that the schedule does not know stay as they were recorded.
 *
 * @param match the match that the record names, where the schedule has it
 * @returns null where a record is about no single team: a ranking, a photo, a rehearsal
 */
export function observedTeam(row: Row, match: Match | undefined): string | null {
  switch (row.kind) {
    case 'observation': {
      const { identifiedBy, team } = row.body
      const moves = identifiedBy === 'position' && row.seat !== undefined && match && match.phase !== 'practice'
      return moves ? slotAt(match, row.seat!).team : team
    }
    case 'visit':
    case 'change':
      return row.body.team
    default:
      return null
  }
}

/** Id of the match that a row is about; null where it is about none. */
export function matchOf(row: Row): string | null {
  switch (row.kind) {
    case 'observation':
    case 'ranking':
      return row.body.match
    case 'change':
      return row.body.afterMatch
    default:
      return null
  }
}
