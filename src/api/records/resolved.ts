import { type Match, matchOf, observedTeam } from '../../model/scouting/index.ts'
import type { StoredRecord } from '../../store/types.ts'

/** Records with whom each is about, by the schedule as it is now. */
export function resolved(records: readonly StoredRecord[], schedule: ReadonlyMap<string, Match>) {
  return records.map((record) => {
    const match = matchOf(record.row)
    return { ...record, team: observedTeam(record.row, match === null ? undefined : schedule.get(match)) }
  })
}
