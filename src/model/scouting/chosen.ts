import type { Replacing } from './current.ts'

/** A lead's choice among the records of one robot in one match. `record` null: all count again. */
export interface Chosen {
  match: string
  team: string
  record: string | null
}

/** A record that is in force, with whom it is about by the schedule as it is now. */
export interface Candidate {
  id: string
  match: string | null
  team: string | null
}

/** One name for a robot in a match. */
export const inMatch = (match: string, team: string): string => JSON.stringify([match, team])

/**
 * Which record of a robot counts alone, by `inMatch`. The last choice of a robot holds. Who chose a record that was corrected
 * since chose its correction; where that is about another robot or match, the choice has become void and all count.
 *
 * @param choices oldest first
 * @param records all of them, those too that were replaced
 */
export function chosenRecords(
  choices: readonly Chosen[],
  records: readonly Replacing[],
  inForce: readonly Candidate[],
): Map<string, string> {
  const chosen = new Map<string, string>()
  if (choices.length === 0) return chosen
  const successors = new Map<string, Replacing>()
  for (const record of records) {
    if (record.replaces === null) continue
    const before = successors.get(record.replaces)
    if (!before || before.arrival < record.arrival) successors.set(record.replaces, record)
  }
  const last = (id: string): string => {
    const seen = new Set<string>()
    let now = id
    for (let next = successors.get(now); next && !seen.has(now); next = successors.get(now)) {
      seen.add(now)
      now = next.row.id
    }
    return now
  }
  const byId = new Map(inForce.map((candidate) => [candidate.id, candidate]))
  for (const { match, team, record } of choices) {
    const key = inMatch(match, team)
    chosen.delete(key)
    const candidate = record === null ? undefined : byId.get(last(record))
    if (candidate?.match === match && candidate.team === team) chosen.set(key, candidate.id)
  }
  return chosen
}

/** Whether a record counts: where one of a robot was chosen, no other does. */
export function counts({ id, match, team }: Candidate, chosen: ReadonlyMap<string, string>): boolean {
  if (match === null || team === null) return true
  const only = chosen.get(inMatch(match, team))
  return only === undefined || only === id
}
