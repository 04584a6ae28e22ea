import { alliances, type EventRecord, type Match } from '../scouting/types.ts'
import { playoffAlliances } from './alliances.ts'
import { matchKey } from './order.ts'
import { positionOf, slotsOf } from './seats.ts'
import { type EventSaid, type Named, tellEvent } from './sentences.ts'

/** What is wrong with a schedule, or worth a look. */
export interface Finding {
  /** Id of the match; null: several together. */
  match: string | null
  /** What is wrong is refused, what is odd is only said. */
  weight: 'wrong' | 'odd'
  message: string
  said: EventSaid
}

export const finding = (match: string | null, weight: Finding['weight'], said: EventSaid): Finding => ({
  match,
  weight,
  ...tellEvent(said),
})

export const named = ({ phase, number, play }: Match): Named => ({ phase, number, play })

/** Everything in a schedule that can not be, or is odd, in the order of the matches. */
export function checkSchedule(event: Pick<EventRecord, 'teams' | 'playoff'>, matches: readonly Match[]): Finding[] {
  const known = new Set(event.teams.map(({ team }) => team))
  const byId = new Map(matches.map((match) => [match.id, match]))
  return [
    ...twice(matches),
    ...matches.flatMap((match) => [...checkTeams(match, known), ...checkPositions(match)]),
    ...checkVoids(matches, byId),
    ...checkTimes(matches),
    ...checkAlliances(event, matches),
  ]
}

function twice(matches: readonly Match[]): Finding[] {
  const ids = new Set<string>()
  const keys = new Set<string>()
  return matches.flatMap((match) => {
    const found: Finding[] = []
    if (ids.has(match.id)) found.push(finding(match.id, 'wrong', { code: 'matchIdTwice', parts: { id: match.id } }))
    if (keys.has(matchKey(match)))
      found.push(finding(match.id, 'wrong', { code: 'matchTwice', parts: { match: named(match) } }))
    ids.add(match.id)
    keys.add(matchKey(match))
    return found
  })
}

function checkTeams(match: Match, known: ReadonlySet<string>): Finding[] {
  const teams = slotsOf(match).map(({ slot }) => slot.team)
  const again = [...new Set(teams.filter((team, index) => teams.indexOf(team) < index))]
  const strange = [...new Set(teams.filter((team) => !known.has(team)))]
  return [
    ...again.map((team) => finding(match.id, 'wrong', { code: 'teamTwice', parts: { match: named(match), team } })),
    ...strange.map((team) => finding(match.id, 'wrong', { code: 'unknownTeam', parts: { match: named(match), team } })),
  ]
}

function checkPositions(match: Match): Finding[] {
  return alliances.flatMap((alliance) => {
    const given = match[alliance].map(positionOf)
    const again = given.find((position, index) => given.indexOf(position) < index)
    if (again === undefined) return []
    const parts = { match: named(match), alliance, position: again }
    return [finding(match.id, 'wrong', { code: 'positionTwice', parts })]
  })
}

function checkVoids(matches: readonly Match[], byId: ReadonlyMap<string, Match>): Finding[] {
  const already = new Set<string>()
  return matches.flatMap((match): Finding[] => {
    const { id, voids } = match
    if (voids === undefined)
      return match.play > 1 ? [finding(id, 'odd', { code: 'playWithoutVoid', parts: { match: named(match) } })] : []
    const earlier = byId.get(voids)
    if (!earlier) return [finding(id, 'wrong', { code: 'voidsNothing', parts: { match: named(match), id: voids } })]
    const parts = { match: named(match), voided: named(earlier) }
    if (earlier.phase !== match.phase || earlier.number !== match.number || earlier.play >= match.play)
      return [finding(id, 'wrong', { code: 'voidsOther', parts })]
    if (already.has(voids)) return [finding(id, 'wrong', { code: 'voidedTwice', parts })]
    already.add(voids)
    return []
  })
}

function checkTimes(matches: readonly Match[]): Finding[] {
  const at = new Map<string, Match>()
  return matches.flatMap((match) => {
    if (match.time === undefined) return []
    const other = at.get(match.time)
    if (!other) {
      at.set(match.time, match)
      return []
    }
    const there = new Set(slotsOf(other).map(({ slot }) => slot.team))
    const teams = slotsOf(match)
      .map(({ slot }) => slot.team)
      .filter((team) => there.has(team))
    if (teams.length === 0) return []
    return [finding(match.id, 'odd', { code: 'sameTime', parts: { match: named(match), other: named(other), teams } })]
  })
}

function checkAlliances({ playoff }: Pick<EventRecord, 'playoff'>, matches: readonly Match[]): Finding[] {
  if (!playoff) return []
  return playoffAlliances(matches)
    .filter((teams) => teams.length > playoff.size)
    .map((teams) => finding(null, 'odd', { code: 'allianceTooLarge', parts: { teams, most: playoff.size } }))
}
