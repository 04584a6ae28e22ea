import { createHash } from 'node:crypto'
import type { Alliance, Assignment, Match, Position, Result } from '../../model/scouting/types.ts'
import type { OfficialResultModel, ScheduledMatchModel, SeatAssignmentModel } from '../generated/models.ts'
import type { StoredMatch, StoredResult } from './types.ts'

export const matchOf = (row: Pick<ScheduledMatchModel, 'body' | 'revision' | 'changedAt'>): StoredMatch => ({
  match: JSON.parse(row.body) as Match,
  revision: row.revision,
  changedAt: row.changedAt.toISOString(),
})

export const resultOf = (row: Omit<OfficialResultModel, 'workspaceId' | 'event'>): StoredResult => ({
  match: row.match,
  revision: row.revision,
  enteredAt: row.enteredAt.toISOString(),
  person: row.person,
  result: row.body === null ? null : (JSON.parse(row.body) as Result),
})

export const assignmentOf = (
  row: Pick<SeatAssignmentModel, 'match' | 'alliance' | 'position' | 'person'>,
): Assignment => ({
  match: row.match,
  seat: { alliance: row.alliance as Alliance, position: row.position as Position },
  person: row.person,
})

/** A short text that is another as soon as one of these is. */
export const markOf = (parts: readonly (string | number | boolean | null)[][]): string =>
  createHash('sha256').update(JSON.stringify(parts)).digest('base64url').slice(0, 22)
