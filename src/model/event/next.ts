import type { Assignment, Match } from '../scouting/types.ts'
import { inOrder } from './order.ts'

export interface NextMatch {
  match: Match
  seat: Assignment['seat']
}

/** The next match that a person watches: the first in the order of play that is neither over nor voided. */
export function nextMatchOf(
  person: string,
  of: {
    matches: readonly Match[]
    assignments: readonly Assignment[]
    /** Whether a match is over: it has a result, or is voided. */
    over: (match: string) => boolean
  },
): NextMatch | null {
  const own = new Map(of.assignments.filter((each) => each.person === person).map(({ match, seat }) => [match, seat]))
  const match = of.matches.toSorted(inOrder).find(({ id }) => own.has(id) && !of.over(id))
  return match ? { match, seat: own.get(match.id)! } : null
}
