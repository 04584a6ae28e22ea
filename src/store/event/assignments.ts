import { seatKey } from '../../model/event/seats.ts'
import type { Assignment, Seat } from '../../model/scouting/types.ts'
import type { TransactionClient } from '../generated/internal/prismaNamespace.ts'
import { audit } from './audit.ts'
import { assignmentOf, markOf } from './rows.ts'
import type { Scope } from './schedule.ts'
import type { AssignOutcome, By } from './types.ts'

type Reader = Pick<TransactionClient, 'seatAssignment'>

export async function readAssignments(
  client: Reader,
  scope: Scope,
): Promise<{ assignments: Assignment[]; mark: string }> {
  const rows = await client.seatAssignment.findMany({
    // Of removed matches the seats are kept, and belong to nothing until the match is back.
    where: { ...scope, of: { removed: false } },
    orderBy: [{ match: 'asc' }, { alliance: 'desc' }, { position: 'asc' }],
  })
  const assignments = rows.map(assignmentOf)
  return { assignments, mark: markOf(assignments.map(({ match, seat, person }) => [match, seatKey(seat), person])) }
}

export async function assign(
  transaction: TransactionClient,
  scope: Scope,
  { assignments, mark, by, now }: { assignments: readonly Assignment[]; mark: string; by: By; now: Date },
): Promise<AssignOutcome> {
  const before = await readAssignments(transaction, scope)
  if (before.mark !== mark) return { stale: true }
  const was = new Map(before.assignments.map((each) => [placeOf(each), each.person]))
  const changed = assignments.filter((each) => was.get(placeOf(each)) !== each.person)
  for (const assignment of changed) await put(transaction, scope, { assignment, now })
  if (changed.length > 0) {
    const detail = { seats: changed.length, matches: [...new Set(changed.map(({ match }) => match))] }
    await audit(transaction, {
      workspaceId: scope.workspaceId,
      at: now,
      by,
      action: 'event.assignments.assign',
      subject: scope.event,
      detail,
    })
  }
  return { applied: await readAssignments(transaction, scope) }
}

const placeOf = ({ match, seat }: Assignment): string => `${match} ${seatKey(seat)}`

async function put(
  transaction: TransactionClient,
  scope: Scope,
  { assignment, now }: { assignment: Assignment; now: Date },
): Promise<void> {
  const { match, seat, person } = assignment
  const key = { ...scope, match, alliance: seat.alliance, position: seat.position }
  await transaction.seatAssignment.upsert({
    where: { workspaceId_event_match_alliance_position: key },
    create: { ...key, person, since: now },
    update: { person, since: now },
  })
}

/** Two seats change hands at once, so that nobody watches two robots and no seat falls to nobody by the change. */
export async function takeSeat(
  transaction: TransactionClient,
  scope: Scope,
  { match, seat, person, by, now }: { match: string; seat: Seat; person: string; by: By; now: Date },
): Promise<Assignment[] | null> {
  const row = await transaction.scheduledMatch.findUnique({ where: { workspaceId_event_id: { ...scope, id: match } } })
  if (!row || row.removed) return null
  const there = (await transaction.seatAssignment.findMany({ where: { ...scope, match } })).map(assignmentOf)
  const from = there.find((each) => seatKey(each.seat) === seatKey(seat))?.person ?? null
  const own = there.filter((each) => each.person === person && seatKey(each.seat) !== seatKey(seat))
  if (from === person) return []
  const changed = [
    { match, seat, person },
    ...own.map((each, index) => ({ ...each, person: index === 0 ? from : null })),
  ]
  for (const assignment of changed) await put(transaction, scope, { assignment, now })
  const detail = { match, ...seat, person, from }
  await audit(transaction, {
    workspaceId: scope.workspaceId,
    at: now,
    by,
    action: 'event.assignments.take',
    subject: scope.event,
    detail,
  })
  return changed
}
