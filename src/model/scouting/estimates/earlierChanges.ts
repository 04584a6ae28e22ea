import { type EarlierEvent, type EventInput, eventEstimates, matchesBefore, one } from './ofEvent.ts'
import type { Estimate, TeamEstimate } from './types.ts'

/** What an earlier event changes about what is believed of a team. */
export interface EarlierChange {
  team: string
  /** Own matches at this event, and at the earlier one. */
  matches: number
  before: number
  /** What the latter count together, in matches of this event. */
  worth: number
  /** Changes of its robot since its last match there, as far as they were told. */
  changes: number
  with: Believed
  without: Believed
}

interface Believed {
  points: Estimate
  attempts: Estimate
}

/** All teams of an event with an earlier event and without any. */
export function earlierChanges(input: EventInput, earlier: EarlierEvent): EarlierChange[] {
  const without = eventEstimates({ ...input, earlier: undefined })
  const with_ = eventEstimates({ ...input, earlier })
  const before = matchesBefore(input.game, earlier)
  return input.teams.map((team) => {
    const own = before.get(team) ?? []
    const here = input.changes.filter((change) => change.team === team).length
    const counting = with_.weightedOf(team).filter((each) => !each.here)
    return {
      team,
      matches: with_.team(team).matches,
      before: own.length,
      worth: counting.reduce((sum, { weight }) => sum + weight, 0),
      changes: Math.max(0, (own.at(-1)?.steps ?? 1) - 1) + here,
      with: believed(with_.team(team)),
      without: believed(without.team(team)),
    }
  })
}

const believed = ({ points, attempts }: TeamEstimate): Believed => ({ points: one(points), attempts: one(attempts) })
