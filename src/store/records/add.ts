import { cellsOf, columns } from '../../model/scouting/cells.ts'
import type { Receipt } from '../../model/scouting/index.ts'
import type { PrismaClient } from '../generated/client.ts'
import type { HashedRow } from './types.ts'

export type Raw = Pick<PrismaClient, '$queryRawUnsafe'>

export interface Place {
  workspaceId: string
  at: Date
}

/** A moment as the database's adapter writes it, so that both compare. */
export const moment = (at: Date): string => at.toISOString().replace('Z', '+00:00')

// One parameter for all rows: binding each cell by itself takes longer than the insertion.
const insertRecords = `
  INSERT INTO "FieldRecord" ("workspaceId", "receivedAt", "person", ${columns.map((name) => `"${name}"`).join(', ')})
  SELECT ?, ?, ?, ${columns.map((_, index) => `json_extract(entry.value, '$[${index}]')`).join(', ')}
  FROM json_each(?) AS entry WHERE true ORDER BY entry.key
  ON CONFLICT ("workspaceId", "id") DO NOTHING RETURNING "id"`

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
