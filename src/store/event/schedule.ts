import type { ScheduleEdit } from '../../model/event/changes.ts'
import { inOrder } from '../../model/event/order.ts'
import { seats, slotAt } from '../../model/event/seats.ts'
import type { Match } from '../../model/scouting/types.ts'
import type { TransactionClient } from '../generated/internal/prismaNamespace.ts'
import { audit } from './audit.ts'
import { markOf, matchOf } from './rows.ts'
import type { By, ScheduleOutcome, StoredMatch } from './types.ts'

export interface Scope {
  workspaceId: string
  event: string
}

interface Row extends StoredMatch {
  removed: boolean
}

export type Reader = Pick<TransactionClient, 'scheduledMatch'>

async function rowsOf(client: Reader, { workspaceId, event }: Scope): Promise<{ rows: Row[]; mark: string }> {
  const found = await client.scheduledMatch.findMany({ where: { workspaceId, event }, orderBy: { id: 'asc' } })
  const mark = markOf(found.map(({ id, revision, removed }) => [id, revision, removed]))
  return { rows: found.map((row) => ({ ...matchOf(row), removed: row.removed })), mark }
}

export async function readSchedule(client: Reader, scope: Scope): Promise<{ matches: StoredMatch[]; mark: string }> {
  const { rows, mark } = await rowsOf(client, scope)
  const matches = rows
    .filter(({ removed }) => !removed)
    .map(({ removed: _, ...stored }) => stored)
    .toSorted((a, b) => inOrder(a.match, b.match))
  return { matches, mark }
}

/** Puts and removes matches; a match that is as it was stays untouched, so that the same edit twice changes nothing. */
export async function editSchedule(
  transaction: TransactionClient,
  scope: Scope,
  { put, remove, mark, by, now }: ScheduleEdit & { mark: string; by: By; now: Date },
): Promise<ScheduleOutcome> {
  const { rows, mark: current } = await rowsOf(transaction, scope)
  if (mark !== current) return { stale: true }
  const known = new Map(rows.map((row) => [row.match.id, row]))
  const going = new Set(remove.filter((id) => !put.some((match) => match.id === id)))
  const gone = rows.filter(({ match, removed }) => !removed && going.has(match.id))
  const changed = put.filter((match) => {
    const row = known.get(match.id)
    return !row || row.removed || JSON.stringify(row.match) !== JSON.stringify(match)
  })
  for (const match of changed) await write(transaction, scope, { match, revision: next(known.get(match.id)), now })
  for (const { match, revision } of gone)
    await transaction.scheduledMatch.update({
      where: { workspaceId_event_id: { ...scope, id: match.id } },
      data: { removed: true, revision: revision + 1, changedAt: now },
    })
  const before = changed.flatMap((match) => known.get(match.id) ?? []).filter(({ removed }) => !removed)
  const touched = changed.length + gone.length
  if (touched > 0) {
    const detail = {
      put: changed.map(({ id }) => id),
      removed: gone.map(({ match }) => match.id),
      substituted: before.flatMap(({ match }) => substitutions(match, changed)),
    }
    await audit(transaction, {
      workspaceId: scope.workspaceId,
      at: now,
      by,
      action: 'event.schedule.edit',
      subject: scope.event,
      detail,
    })
  }
  const stayed = new Set(before.map(({ match }) => match.id))
  return {
    applied: {
      mark: (await rowsOf(transaction, scope)).mark,
      undo: {
        put: [...before, ...gone].map(({ match }) => match),
        remove: changed.map(({ id }) => id).filter((id) => !stayed.has(id)),
      },
      touched,
    },
  }
}

const next = (row: Row | undefined): number => (row?.revision ?? 0) + 1

/** Writes a match as its next revision. */
export async function write(
  transaction: TransactionClient,
  scope: Scope,
  { match, revision, now }: { match: Match; revision: number; now: Date },
): Promise<void> {
  const { id, phase, number, play } = match
  const row = { phase, number, play, body: JSON.stringify(match), revision, changedAt: now, removed: false }
  await transaction.scheduledMatch.upsert({
    where: { workspaceId_event_id: { ...scope, id } },
    create: { ...scope, id, ...row },
    update: row,
  })
}

/** Which team stood where another plays now: the schedule itself no longer tells. */
function substitutions(before: Match, changed: readonly Match[]) {
  const after = changed.find(({ id }) => id === before.id)
  return seats.flatMap((seat) => {
    const [from, to] = [slotAt(before, seat).team, after && slotAt(after, seat).team]
    return to === undefined || from === to ? [] : [{ match: before.id, ...seat, from, to }]
  })
}
