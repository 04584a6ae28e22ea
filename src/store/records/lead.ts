import { randomUUID } from 'node:crypto'
import type { Row } from '../../model/scouting/types.ts'
import type { PrismaClient } from '../generated/client.ts'
import type { TransactionClient } from '../generated/internal/prismaNamespace.ts'
import type { DrillModel, QuarantinedRecordModel } from '../generated/models.ts'
import { addRecords, type Place } from './add.ts'
import { recordColumns, recordOf } from './rows.ts'
import type {
  ApartReason,
  ApartRecord,
  Choice,
  Decision,
  Resolution,
  StoredDrill,
  StoredRecord,
  Successor,
} from './types.ts'

type Client = PrismaClient | TransactionClient

/** Records that take each other's place in a circle, as a file might have them, are followed no further. */
const longest = 200

/** Within a transaction: nothing is added where one of the replaced records is not there, or has a successor already. */
export async function replaceRecords(
  client: TransactionClient,
  place: Place,
  { successors, person }: { successors: readonly Successor[]; person: string | null },
): Promise<{ done: true } | { stale: string }> {
  const ids = successors.map(({ replaces }) => replaces)
  const where = { workspaceId: place.workspaceId }
  const there = await client.fieldRecord.findMany({ where: { ...where, id: { in: ids } }, select: { id: true } })
  const taken = await client.fieldRecord.findMany({
    where: { ...where, replaces: { in: ids } },
    select: { replaces: true },
  })
  const known = new Set(there.map(({ id }) => id))
  const stale = ids.find((id) => !known.has(id)) ?? taken[0]?.replaces
  if (stale !== undefined && stale !== null) return { stale }
  await addRecords(client, place, { person, rows: successors })
  return { done: true }
}

const apartOf = (row: QuarantinedRecordModel): ApartRecord => ({
  arrival: row.arrival,
  receivedAt: row.receivedAt.toISOString(),
  row: JSON.parse(row.body) as Row,
  hash: row.hash,
  reason: row.reason as ApartReason,
  person: row.person,
  resolution: row.resolution as Resolution | null,
  resolvedAt: row.resolvedAt?.toISOString() ?? null,
  resolvedBy: row.resolvedBy,
})

export const apartRowsOf = (rows: readonly QuarantinedRecordModel[]): ApartRecord[] => rows.map(apartOf)

/** Of the event, and what no event of this workspace has a place for: nobody else would see it. */
export async function readApart(client: Client, workspaceId: string, event: string): Promise<ApartRecord[]> {
  const rows = await client.quarantinedRecord.findMany({ where: { workspaceId }, orderBy: { arrival: 'asc' } })
  const where = { workspaceId, kind: 'event' }
  const known = new Set((await client.document.findMany({ where, select: { id: true } })).map(({ id }) => id))
  return rows.filter((row) => row.event === event || !known.has(row.event)).map(apartOf)
}

/** What of it waits for a decision: as often as a board is looked at, and rows may be photos. */
export async function countApart(client: Client, workspaceId: string, event: string): Promise<number> {
  const of = await client.quarantinedRecord.groupBy({
    by: ['event'],
    where: { workspaceId, resolution: null },
    _count: true,
  })
  if (of.length === 0) return 0
  const where = { workspaceId, kind: 'event', id: { in: of.map((each) => each.event) } }
  const known = new Set((await client.document.findMany({ where, select: { id: true } })).map(({ id }) => id))
  const counted = of.filter((each) => each.event === event || !known.has(each.event))
  return counted.reduce((sum, { _count }) => sum + _count, 0)
}

export async function resolveApart(
  client: TransactionClient,
  place: Place,
  { arrival, before, resolution, person, adds }: { arrival: number } & Decision,
): Promise<boolean> {
  const { workspaceId } = place
  const replaces = adds?.replaces ?? null
  if (replaces !== null && (await client.fieldRecord.findFirst({ where: { workspaceId, replaces } }))) return false
  const { count } = await client.quarantinedRecord.updateMany({
    where: { workspaceId, arrival, resolution: before },
    data: { resolution, resolvedAt: place.at, resolvedBy: person },
  })
  if (count === 0) return false
  if (adds) await addRecords(client, place, { person, rows: [adds] })
  return true
}

export async function readChain(client: Client, workspaceId: string, id: string): Promise<StoredRecord[]> {
  const found: StoredRecord[] = []
  const select = recordColumns
  let row = await client.fieldRecord.findUnique({ where: { workspaceId_id: { workspaceId, id } }, select })
  while (row && found.length < longest) {
    const record = recordOf(row)
    found.push(record)
    const where = { workspaceId, replaces: record.row.id }
    row = await client.fieldRecord.findFirst({ where, orderBy: { arrival: 'desc' }, select })
  }
  return found
}

export async function readChoices(client: Client, workspaceId: string, event: string): Promise<Choice[]> {
  const rows = await client.recordChoice.findMany({ where: { workspaceId, event }, orderBy: { sequence: 'asc' } })
  return rows.map(({ match, team, record, person, reason, chosenAt }) => {
    return { match, team, record, person, reason, chosenAt: chosenAt.toISOString() }
  })
}

const drillOf = ({ id, startedAt, endedAt, startedBy }: DrillModel): StoredDrill => ({
  id,
  startedAt: startedAt.toISOString(),
  endedAt: endedAt?.toISOString() ?? null,
  startedBy,
})

export async function readDrills(client: Client, workspaceId: string, event: string): Promise<StoredDrill[]> {
  const rows = await client.drill.findMany({ where: { workspaceId, event }, orderBy: { startedAt: 'desc' } })
  return rows.map(drillOf)
}

export async function beginDrill(
  client: TransactionClient,
  { workspaceId, at }: Place,
  { event, person }: { event: string; person: string | null },
): Promise<StoredDrill> {
  const running = await client.drill.findFirst({ where: { workspaceId, event, endedAt: null } })
  const data = { workspaceId, event, id: randomUUID(), startedAt: at, startedBy: person }
  return drillOf(running ?? (await client.drill.create({ data })))
}

export async function finishDrill(
  client: TransactionClient,
  { workspaceId, at }: Place,
  { event, id }: { event: string; id: string },
): Promise<StoredDrill | null> {
  await client.drill.updateMany({ where: { workspaceId, event, id, endedAt: null }, data: { endedAt: at } })
  const row = await client.drill.findUnique({ where: { workspaceId_event_id: { workspaceId, event, id } } })
  return row && drillOf(row)
}
