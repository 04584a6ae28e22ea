import { cellsOf } from '../../model/scouting/cells.ts'
import type { Receipt } from '../../model/scouting/index.ts'
import type { TransactionClient } from '../generated/internal/prismaNamespace.ts'
import { dataOf } from './rows.ts'
import type { HashedRow } from './types.ts'

export interface Place {
  workspaceId: string
  at: Date
}

/** A moment as the database's adapter writes it, so that both compare. */
export const moment = (at: Date): string => at.toISOString().replace('Z', '+00:00')

/** Within a transaction: adds rows whose ids are not taken. @param person who handed them in */
export async function addRecords(
  client: Pick<TransactionClient, 'fieldRecord'>,
  { workspaceId, at }: Place,
  { person, rows }: { person: string | null; rows: readonly { hashed: HashedRow; replaces: string | null }[] },
): Promise<void> {
  const ids = rows.map(({ hashed }) => hashed.row.id)
  const there = await client.fieldRecord.findMany({ where: { workspaceId, id: { in: ids } }, select: { id: true } })
  const taken = new Set(there.map(({ id }) => id))
  const fresh = rows.filter(({ hashed }) => !taken.has(hashed.row.id) && taken.add(hashed.row.id))
  await client.fieldRecord.createMany({
    data: fresh.map(({ hashed, replaces }) => ({
      ...dataOf(cellsOf(hashed, replaces)),
      ...{ workspaceId, receivedAt: at, person },
    })),
  })
}

export async function receiptOf(
  client: Pick<TransactionClient, 'fieldRecord' | 'quarantinedRecord'>,
  { workspaceId, at }: Place,
  device: string,
): Promise<Receipt> {
  const held = await client.fieldRecord.count({ where: { workspaceId, device } })
  const quarantined = await client.quarantinedRecord.count({ where: { workspaceId, device, resolution: null } })
  return { held, quarantined, at: at.toISOString() }
}
