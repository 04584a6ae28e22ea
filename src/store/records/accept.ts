import { matchOf, type Receipt } from '../../model/scouting/index.ts'
import type { PrismaClient } from '../generated/client.ts'
import type { Accepted, ApartReason, Batch, HashedRow, Outcome } from './types.ts'

export type Raw = Pick<PrismaClient, '$queryRawUnsafe' | '$executeRawUnsafe'>

export interface Place {
  workspaceId: string
  at: Date
}

/** A moment as the database's adapter writes it, so that both compare. */
export const moment = (at: Date): string => at.toISOString().replace('Z', '+00:00')

export const recordCells = [
  'id',
  'event',
  'kind',
  'match',
  'team',
  'alliance',
  'position',
  'identifiedBy',
  'device',
  'sequence',
  'scout',
  'replaces',
  'hash',
  'body',
] as const

export function cellsOf({ row, text, hash }: HashedRow, replaces: string | null): unknown[] {
  const { id, event, kind, device, sequence, scout, seat, body } = row
  const team = 'team' in body ? body.team : null
  const identifiedBy = row.kind === 'observation' ? row.body.identifiedBy : null
  return [
    id,
    event,
    kind,
    matchOf(row),
    team,
    seat?.alliance ?? null,
    seat?.position ?? null,
    identifiedBy,
    device,
    sequence,
    scout,
    replaces,
    hash,
    text,
  ]
}

/** Which record a row takes the place of: a corrected observation says so itself. */
export const replacedBy = ({ row }: HashedRow): string | null =>
  row.kind === 'observation' ? (row.body.replaces ?? null) : null

// One parameter for all rows: binding each cell by itself takes longer than the insertion.
const insertRecords = `
  INSERT INTO "FieldRecord" ("workspaceId", "receivedAt", "person", ${recordCells.map((name) => `"${name}"`).join(', ')})
  SELECT ?, ?, ?, ${recordCells.map((_, index) => `json_extract(entry.value, '$[${index}]')`).join(', ')}
  FROM json_each(?) AS entry WHERE true ORDER BY entry.key
  ON CONFLICT ("workspaceId", "id") DO NOTHING RETURNING "id"`

const insertApart = `
  INSERT INTO "QuarantinedRecord" ("workspaceId", "receivedAt", "person", "id", "event", "device", "hash", "body", "reason")
  SELECT ?, ?, ?, ${[0, 1, 2, 3, 4, 5].map((index) => `json_extract(entry.value, '$[${index}]')`).join(', ')}
  FROM json_each(?) AS entry WHERE true ORDER BY entry.key
  ON CONFLICT ("workspaceId", "id", "hash") DO NOTHING RETURNING "event"`

const among = (column: string) => `"${column}" IN (SELECT value FROM json_each(?))`

/** Adds rows whose ids are not taken; returns those ids. @param person who handed them in */
export async function addRecords(
  client: Raw,
  { workspaceId, at }: Place,
  { person, rows }: { person: string | null; rows: readonly { hashed: HashedRow; replaces: string | null }[] },
): Promise<Set<string>> {
  const cells = JSON.stringify(rows.map(({ hashed, replaces }) => cellsOf(hashed, replaces)))
  const added = await client.$queryRawUnsafe<{ id: string }[]>(insertRecords, workspaceId, moment(at), person, cells)
  return new Set(added.map(({ id }) => id))
}

async function keepApart(
  client: Raw,
  { workspaceId, at }: Place,
  { person, rows }: { person: string | null; rows: readonly (HashedRow & { reason: ApartReason })[] },
): Promise<string[]> {
  const cells = rows.map(({ row, hash, text, reason }) => [row.id, row.event, row.device, hash, text, reason])
  const added = await client.$queryRawUnsafe<{ event: string }[]>(
    insertApart,
    workspaceId,
    moment(at),
    person,
    JSON.stringify(cells),
  )
  return added.map(({ event }) => event)
}

/**
 * One batch, within a transaction. Ids are unique in the database, which alone decides who came first: what is refused there is
 * compared by hash. Same content is held already; other content is kept apart.
 */
export async function acceptBatch(client: Raw, place: Place, batch: Batch): Promise<Omit<Accepted, 'receipt'>> {
  const { person, rows } = batch
  if (rows.length === 0) return { outcomes: [], fresh: [], apart: [] }
  const known = await knownEvents(client, place.workspaceId, new Set(rows.map(({ row }) => row.event)))
  const placed = rows.filter(({ row }) => known.has(row.event))
  const added = await addRecords(client, place, {
    person,
    rows: placed.map((hashed) => ({ hashed, replaces: replacedBy(hashed) })),
  })
  const held = added.size === placed.length ? new Map<string, string>() : await hashesOf(client, place, placed)
  const seen = new Set<string>()
  const apart: (HashedRow & { reason: ApartReason })[] = []
  const outcomes = rows.map((each): Outcome => {
    const { id, event } = each.row
    if (!known.has(event)) return setApart(each, 'unknownEvent')
    const first = added.has(id) && !seen.has(id)
    seen.add(id)
    if (first) return { outcome: 'held', again: false }
    return held.get(id) === each.hash ? { outcome: 'held', again: true } : setApart(each, 'otherContent')
  })
  function setApart(each: HashedRow, reason: ApartReason): Outcome {
    apart.push({ ...each, reason })
    return { outcome: 'apart', reason }
  }
  const freshApart = apart.length > 0 ? await keepApart(client, place, { person, rows: apart }) : []
  const fresh = new Set(placed.filter(({ row }) => added.has(row.id)).map(({ row }) => row.event))
  return { outcomes, fresh: [...fresh], apart: [...new Set(freshApart)] }
}

async function knownEvents(client: Raw, workspaceId: string, events: ReadonlySet<string>): Promise<Set<string>> {
  if (events.size === 0) return new Set()
  const found = await client.$queryRawUnsafe<{ id: string }[]>(
    `SELECT "id" FROM "Document" WHERE "workspaceId" = ? AND "kind" = 'event' AND ${among('id')}`,
    workspaceId,
    JSON.stringify([...events]),
  )
  return new Set(found.map(({ id }) => id))
}

async function hashesOf(client: Raw, { workspaceId }: Place, rows: readonly HashedRow[]): Promise<Map<string, string>> {
  const found = await client.$queryRawUnsafe<{ id: string; hash: string }[]>(
    `SELECT "id", "hash" FROM "FieldRecord" WHERE "workspaceId" = ? AND ${among('id')}`,
    workspaceId,
    JSON.stringify(rows.map(({ row }) => row.id)),
  )
  return new Map(found.map(({ id, hash }) => [id, hash]))
}

/** What a device said of itself with a batch. */
export async function noteDevice(client: Raw, { workspaceId, at }: Place, batch: Batch): Promise<void> {
  if (batch.session === null) return
  await client.$executeRawUnsafe(
    `UPDATE "Device" SET "unsent" = ?, "app" = coalesce(?, "app"), "lastSeenAt" = ? WHERE "workspaceId" = ? AND "id" = ?`,
    batch.unsent,
    batch.app ?? null,
    moment(at),
    workspaceId,
    batch.session,
  )
}

export async function receiptOf(client: Raw, { workspaceId, at }: Place, device: string): Promise<Receipt> {
  const [counted] = await client.$queryRawUnsafe<{ held: bigint; apart: bigint }[]>(
    `SELECT (SELECT count(*) FROM "FieldRecord" WHERE "workspaceId" = ? AND "device" = ?) AS held,
      (SELECT count(*) FROM "QuarantinedRecord" WHERE "workspaceId" = ? AND "device" = ? AND "resolution" IS NULL) AS apart`,
    workspaceId,
    device,
    workspaceId,
    device,
  )
  return { held: Number(counted!.held), quarantined: Number(counted!.apart), at: at.toISOString() }
}
