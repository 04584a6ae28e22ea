import { type Cells, columns } from '../../model/scouting/cells.ts'
import type { TransactionClient } from '../generated/internal/prismaNamespace.ts'
import { moment } from '../records/add.ts'
import { dataOf } from '../records/rows.ts'
import type { StoreHealth } from '../types.ts'

/** A record as it came in elsewhere, with when that was and who handed it in. */
export interface KeptCells {
  cells: Cells
  receivedAt: Date
  person: string | null
}

const cells = [...columns, 'receivedAt', 'person'] as const

// One parameter for all rows: binding each cell by itself takes longer than the insertion.
const inOneParameter = `
  INSERT INTO "FieldRecord" ("workspaceId", ${cells.map((name) => `"${name}"`).join(', ')})
  SELECT ?, ${cells.map((_, index) => `json_extract(entry.value, '$[${index}]')`).join(', ')}
  FROM json_each(?) AS entry WHERE true ORDER BY entry.key`

/** Records whose ids are known to be free, in their order. */
export async function insertRecords(
  transaction: TransactionClient,
  engine: StoreHealth['engine'],
  { workspaceId, rows }: { workspaceId: string; rows: readonly KeptCells[] },
): Promise<void> {
  if (engine === 'sqlite') {
    const all = rows.map((row) => [...row.cells, moment(row.receivedAt), row.person])
    await transaction.$executeRawUnsafe(inOneParameter, workspaceId, JSON.stringify(all))
    return
  }
  await transaction.fieldRecord.createMany({
    data: rows.map((row) => ({
      ...dataOf(row.cells),
      ...{ workspaceId, receivedAt: row.receivedAt, person: row.person },
    })),
  })
}
