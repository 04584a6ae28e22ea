import type { EventRecord } from '../../model/scouting/index.ts'
import type { Known } from '../records/known.ts'

/** Our teams: as the event says, else those that were recorded in practice, since nobody times another team's. */
export function ownTeams(event: EventRecord, { inForce }: Pick<Known, 'inForce'>): string[] {
  if (event.own !== undefined) return [event.own]
  const practised = inForce.flatMap(({ row, team }) =>
    row.kind === 'observation' && row.body.origin === 'practice' && team !== null ? [team] : [],
  )
  return [...new Set(practised)]
}
