import type { Game } from '../../documents/types.ts'
import { inOrder } from '../../event/order.ts'
import { slotsOf } from '../../event/seats.ts'
import type { Change, Match, Observation } from '../types.ts'
import { averaged } from './average.ts'
import { seenIn } from './record.ts'
import type { Seen } from './types.ts'

/** A lead's choice: of all records of a robot in a match, this one counts. */
export interface Choice {
  match: string
  team: string
  record: string
}

/** A robot's match as it was seen. */
export interface TeamMatch extends Seen {
  match: string
  /** How often the robot had been changed before. */
  era: number
}

export interface EventRecords {
  game: Game
  matches: readonly Match[]
  /** In force, with whom each is about by the schedule as it is now. */
  watched: readonly { observation: Observation; team: string }[]
  changes?: readonly Change[]
  choices?: readonly Choice[]
}

/**
 * What was seen of each team, match by match in the order of play. Matches of practice, runs outside of matches, human players
 * and records of robots that were not in the match are left out; a robot that the schedule knows as absent is absent without
 * a record.
 */
export function seenByTeam({
  game,
  matches,
  watched,
  changes = [],
  choices = [],
}: EventRecords): Map<string, TeamMatch[]> {
  const chosen = new Map(choices.map(({ match, team, record }) => [keyOf(match, team), record]))
  const records = new Map<string, Seen[]>()
  for (const { observation, team } of watched) {
    if (observation.subject !== 'robot' || observation.match === null) continue
    const key = keyOf(observation.match, team)
    if (chosen.has(key) && chosen.get(key) !== observation.id) continue
    const all = records.get(key)
    if (all) all.push(seenIn(game, observation))
    else records.set(key, [seenIn(game, observation)])
  }
  const teams = new Map<string, TeamMatch[]>()
  const ordered = matches.filter(({ phase }) => phase !== 'practice').toSorted(inOrder)
  const eras = erasOf(ordered, changes)
  for (const match of ordered)
    for (const { slot } of slotsOf(match)) {
      const seen = records.get(keyOf(match.id, slot.team))
      const one = seen ? averaged(seen) : slot.state === 'absent' ? nothing : null
      if (!one) continue
      const era = eras(slot.team, match)
      const own = teams.get(slot.team)
      if (own) own.push({ ...one, match: match.id, era })
      else teams.set(slot.team, [{ ...one, match: match.id, era }])
    }
  return teams
}

const keyOf = (match: string, team: string) => `${match} ${team}`

const nothing: Seen = {
  records: [],
  absent: true,
  stopped: false,
  autonomous: null,
  left: null,
  routine: null,
  startSpot: null,
  teleop: null,
  finish: undefined,
  fouls: null,
}

function erasOf(ordered: readonly Match[], changes: readonly Change[]) {
  const place = new Map(ordered.map(({ id }, index) => [id, index]))
  return (team: string, match: Match): number => {
    const at = place.get(match.id) as number
    return changes.filter(
      ({ team: changed, afterMatch }) =>
        changed === team && (afterMatch === null || (place.get(afterMatch) ?? Number.POSITIVE_INFINITY) < at),
    ).length
  }
}
