import type { Assignment, Match } from '../scouting/types.ts'
import { type Finding, finding, named } from './check.ts'
import { seatKey } from './seats.ts'

/** What can not be in a list of assignments: a match that is not there, a seat twice, a person at two seats of a match. */
export function checkAssignments(matches: readonly Match[], assignments: readonly Assignment[]): Finding[] {
  const known = new Map(matches.map((match) => [match.id, match]))
  const seatsSeen = new Set<string>()
  const peopleSeen = new Set<string>()
  return assignments.flatMap(({ match: id, seat, person }): Finding[] => {
    const match = known.get(id)
    if (!match) return [finding(id, 'wrong', { code: 'noMatch', parts: { id } })]
    const found: Finding[] = []
    const [place, watcher] = [`${id} ${seatKey(seat)}`, `${id} ${person}`]
    if (seatsSeen.has(place))
      found.push(finding(id, 'wrong', { code: 'seatTwice', parts: { match: named(match), ...seat } }))
    if (person !== null && peopleSeen.has(watcher))
      found.push(finding(id, 'wrong', { code: 'personTwice', parts: { match: named(match), person } }))
    seatsSeen.add(place)
    if (person !== null) peopleSeen.add(watcher)
    return found
  })
}
