import type { ClientBase } from 'pg'
import { columns, textIn } from '../../model/scouting/cells.ts'
import type { Place } from '../records/add.ts'
import type { TakeIn } from '../records/intake.ts'
import type { ApartReason, Cells } from '../records/types.ts'

/** A row, with where and by whom it was handed in. */
export interface FreshRow {
  place: Place
  person: string | null
  cells: Cells
}

export interface ApartRow extends FreshRow {
  reason: ApartReason
}

/** Something of a workspace. */
export const keyOf = (workspaceId: string, id: string): string => JSON.stringify([workspaceId, id])

/** Columns by column, as `unnest` takes them. */
const across = (rows: readonly (readonly unknown[])[], width: number): unknown[][] =>
  Array.from({ length: width }, (_, column) => rows.map((row) => row[column] ?? null))

/** Each pair once. */
function pairs(of: readonly (readonly [string, string])[]): unknown[][] {
  return across([...new Map(of.map((pair) => [keyOf(...pair), pair])).values()], 2)
}

/** Which events of the rows there are, by `keyOf`. */
export async function knownEvents(client: ClientBase, rows: readonly FreshRow[]): Promise<Set<string>> {
  const of = pairs(rows.map(({ place, cells }) => [place.workspaceId, textIn(cells, 'event')]))
  const { rows: found } = await client.query<{ workspaceId: string; id: string }>(
    `SELECT "workspaceId", "id" FROM "Document" JOIN unnest($1::text[], $2::text[]) AS asked("in", "of")
      ON "workspaceId" = "in" AND "id" = "of" AND "kind" = 'event'`,
    of,
  )
  return new Set(found.map(({ workspaceId, id }) => keyOf(workspaceId, id)))
}

/** Hashes of the rows' ids that are taken, by `keyOf`. */
export async function hashesOf(client: ClientBase, rows: readonly FreshRow[]): Promise<Map<string, string>> {
  const of = pairs(rows.map(({ place, cells }) => [place.workspaceId, textIn(cells, 'id')]))
  const { rows: found } = await client.query<{ workspaceId: string; id: string; hash: string }>(
    `SELECT "workspaceId", "id", "hash" FROM "FieldRecord" JOIN unnest($1::text[], $2::text[]) AS asked("in", "of")
      ON "workspaceId" = "in" AND "id" = "of"`,
    of,
  )
  return new Map(found.map(({ workspaceId, id, hash }) => [keyOf(workspaceId, id), hash]))
}

/** How much of each device that hands something in is held, and kept apart undecided, by `keyOf`. */
export async function countsOf(client: ClientBase, together: Parameters<TakeIn>[0]) {
  const of = pairs(together.map(({ place, batch }) => [place.workspaceId, batch.device]))
  const { rows } = await client.query<{ in: string; of: string; held: string; apart: string }>(
    `SELECT "in", "of",
      (SELECT count(*) FROM "FieldRecord" WHERE "workspaceId" = "in" AND "device" = "of") AS "held",
      (SELECT count(*) FROM "QuarantinedRecord"
        WHERE "workspaceId" = "in" AND "device" = "of" AND "resolution" IS NULL) AS "apart"
      FROM unnest($1::text[], $2::text[]) AS asked("in", "of")`,
    of,
  )
  return new Map(
    rows.map((row) => [keyOf(row.in, row.of), { held: Number(row.held), apart: Number(row.apart) }] as const),
  )
}

const numbers = new Set<string>(['position', 'sequence'])
const typeOf = (name: string) => (name === 'receivedAt' ? 'timestamp' : numbers.has(name) ? 'int' : 'text')

/** An insertion of rows in their order, with one parameter a column. */
function insertion(table: string, names: readonly string[]): string {
  const listed = names.map((name) => `"${name}"`).join(', ')
  const given = names.map((name, index) => `$${index + 1}::${typeOf(name)}[]`).join(', ')
  return `INSERT INTO "${table}" (${listed}) SELECT ${listed}
    FROM unnest(${given}) WITH ORDINALITY AS given(${listed}, "place in order") ORDER BY "place in order"`
}

const recordCells = ['workspaceId', 'receivedAt', 'person', ...columns]
const insertRecords = insertion('FieldRecord', recordCells)

/** Rows whose ids are free. */
export async function addRecords(client: ClientBase, rows: readonly FreshRow[]): Promise<void> {
  if (rows.length === 0) return
  const cells = rows.map(({ place, person, cells: own }) => [place.workspaceId, place.at.toISOString(), person, ...own])
  await client.query(insertRecords, across(cells, recordCells.length))
}

const apartCells = ['workspaceId', 'receivedAt', 'person', 'id', 'event', 'device', 'hash', 'body', 'reason']
const insertApart = `${insertion('QuarantinedRecord', apartCells)}
  ON CONFLICT ("workspaceId", "id", "hash") DO NOTHING RETURNING "workspaceId", "id", "hash"`

/** Keeps rows for a lead to decide unless they are kept already; returns those that were not. */
export async function keepApart(client: ClientBase, rows: readonly ApartRow[]): Promise<ApartRow[]> {
  if (rows.length === 0) return []
  const kept = ['id', 'event', 'device', 'hash'] as const
  const cells = rows.map(({ place, person, cells: own, reason }) => {
    const body = own[columns.indexOf('body')]
    return [place.workspaceId, place.at.toISOString(), person, ...kept.map((name) => textIn(own, name)), body, reason]
  })
  const { rows: added } = await client.query<{ workspaceId: string; id: string; hash: string }>(
    insertApart,
    across(cells, apartCells.length),
  )
  const fresh = new Set(added.map(({ workspaceId, id, hash }) => keyOf(workspaceId, `${id} ${hash}`)))
  // Of rows that are alike the first one was kept.
  return rows.filter(({ place, cells: own }) =>
    fresh.delete(keyOf(place.workspaceId, `${textIn(own, 'id')} ${textIn(own, 'hash')}`)),
  )
}

/** What signed-in devices say of themselves; of several batches of one the last counts. */
export async function noteDevices(client: ClientBase, together: Parameters<TakeIn>[0]): Promise<void> {
  const notes = new Map<string, unknown[]>()
  for (const { place, batch } of together) {
    if (batch.session === null) continue
    const key = keyOf(place.workspaceId, batch.session)
    const app = batch.app ?? notes.get(key)?.[1] ?? null
    notes.set(key, [batch.unsent, app, place.at.toISOString(), place.workspaceId, batch.session])
  }
  if (notes.size === 0) return
  await client.query(
    `UPDATE "Device" SET "unsent" = told."held", "app" = coalesce(told."runs", "app"), "lastSeenAt" = told."at"
      FROM unnest($1::int[], $2::text[], $3::timestamp[], $4::text[], $5::text[]) AS told("held", "runs", "at", "in", "of")
      WHERE "workspaceId" = told."in" AND "id" = told."of"`,
    across([...notes.values()], 5),
  )
}
