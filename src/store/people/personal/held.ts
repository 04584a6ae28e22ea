import type { Row } from '../../../model/scouting/types.ts'
import type { TransactionClient } from '../../generated/internal/prismaNamespace.ts'
import { apartRowsOf } from '../../records/lead.ts'
import { recordColumns, recordOf } from '../../records/rows.ts'
import { auditOf, deviceOf, folded, invitationOf, personOf } from '../rows.ts'
import type { PersonalData } from '../types.ts'
import { documentsNaming } from './typed.ts'

interface Whose {
  workspaceId: string
  person: string
}

/** Everything that is held of a person, as it is at one moment. */
export async function readHeld(client: TransactionClient, of: Whose): Promise<PersonalData | null> {
  const { workspaceId, person } = of
  const account = await client.person.findUnique({ where: { workspaceId_id: { workspaceId, id: person } } })
  if (!account) return null
  const owned = await client.device.findMany({ where: of, include: { owner: true }, orderBy: { createdAt: 'asc' } })
  const devices = owned.map((row) => {
    const { nickname: _, person: __, ...device } = deviceOf(row)
    return device
  })
  return {
    person: personOf(account),
    devices,
    invitations: await readInvitations(client, of, account.nickname),
    ...(await readRecords(client, of, account.nickname)),
    ...(await readEventWork(client, of)),
    typed: await documentsNaming(client, workspaceId, account.nickname),
    audit: await readAudit(
      client,
      of,
      devices.map(({ id }) => id),
    ),
  }
}

async function readInvitations(client: TransactionClient, { workspaceId, person }: Whose, nickname: string) {
  const rows = await client.invitation.findMany({ where: { workspaceId }, orderBy: { createdAt: 'asc' } })
  return rows
    .filter(({ usedBy, createdBy, nickname: whom }) => {
      return usedBy === person || createdBy === person || (whom !== null && folded(whom) === folded(nickname))
    })
    .map(invitationOf)
}

async function readRecords(client: TransactionClient, { workspaceId, person }: Whose, nickname: string) {
  const records = await client.fieldRecord.findMany({
    where: { workspaceId, OR: [{ scout: person }, { person }] },
    orderBy: { arrival: 'asc' },
    select: recordColumns,
  })
  const apart = await client.quarantinedRecord.findMany({ where: { workspaceId }, orderBy: { arrival: 'asc' } })
  const driven = await rowsWithDriver(client, workspaceId, nickname)
  return {
    records: records.map(recordOf),
    apart: apartRowsOf(apart).filter((each) => each.person === person || each.row.scout === person),
    driven: driven.map(({ row }) => ({
      id: row.id,
      event: row.event,
      match: row.kind === 'observation' ? row.body.match : null,
    })),
  }
}

/** Records whose driver was typed in by that name. The database only knows which have a driver at all. */
export async function rowsWithDriver(client: TransactionClient, workspaceId: string, nickname: string) {
  const rows = await client.fieldRecord.findMany({
    where: { workspaceId, kind: 'observation', body: { contains: '"driver":' } },
    orderBy: { arrival: 'asc' },
    select: { arrival: true, body: true },
  })
  return rows
    .map(({ arrival, body }) => ({ arrival, row: JSON.parse(body) as Row }))
    .filter(({ row }) => isDriver(row, nickname))
}

export const isDriver = (row: Row, nickname: string): boolean =>
  row.kind === 'observation' && row.body.driver !== undefined && folded(row.body.driver) === folded(nickname)

/** What somebody did around the matches of events. */
async function readEventWork(client: TransactionClient, where: Whose) {
  const results = await client.officialResult.findMany({ where, orderBy: { enteredAt: 'asc' } })
  const assignments = await client.seatAssignment.findMany({ where, orderBy: { since: 'asc' } })
  const choices = await client.recordChoice.findMany({ where, orderBy: { sequence: 'asc' } })
  const { workspaceId, person } = where
  const drills = await client.drill.findMany({
    where: { workspaceId, startedBy: person },
    orderBy: { startedAt: 'asc' },
  })
  const plans = await client.agreedPlan.findMany({ where, orderBy: { sequence: 'asc' } })
  const selection = await client.selectionLine.findMany({ where, orderBy: { sequence: 'asc' } })
  return {
    results: results.map(({ event, match, revision, enteredAt, body }) => {
      return {
        event,
        match,
        revision,
        enteredAt: enteredAt.toISOString(),
        result: body === null ? null : JSON.parse(body),
      }
    }),
    assignments: assignments.map(({ event, match, alliance, position, since }) => {
      return { event, match, alliance, position, since: since.toISOString() }
    }),
    choices: choices.map(({ event, match, team, record, reason, chosenAt }) => {
      return { event, match, team, record, reason, chosenAt: chosenAt.toISOString() }
    }),
    drills: drills.map(({ event, id, startedAt }) => ({ event, id, startedAt: startedAt.toISOString() })),
    plans: plans.map(({ event, match, id, agreedAt, body }) => {
      return { event, match, id, agreedAt: agreedAt.toISOString(), body: JSON.parse(body) }
    }),
    selection: selection.map(({ event, id, writtenAt, body }) => {
      return { event, id, writtenAt: writtenAt.toISOString(), line: JSON.parse(body) }
    }),
  }
}

async function readAudit(client: TransactionClient, { workspaceId, person }: Whose, devices: readonly string[]) {
  const ids = [...devices]
  const rows = await client.auditEntry.findMany({
    // What others did with the account names it as what it was about.
    where: {
      workspaceId,
      OR: [{ person }, { device: { in: ids } }, { subject: { contains: person } }, { subject: { in: ids } }],
    },
    orderBy: { sequence: 'asc' },
  })
  return rows.map(auditOf)
}
