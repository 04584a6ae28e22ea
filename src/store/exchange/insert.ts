import { bodyIn, type Cells, columns } from '../../model/scouting/cells.ts'
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

const cellByCell = `
  INSERT INTO "FieldRecord" ("workspaceId", ${cells.map((name) => `"${name}"`).join(', ')})
  VALUES (?, ${cells.map(() => '?').join(', ')})`

/** Letters from which on a row, which has a photo then, goes by itself: out of one text it would be looked for once for each cell. */
const alone = 10_000

/** Records whose ids are known to be free, in their order. */
export async function insertRecords(
  transaction: TransactionClient,
  engine: StoreHealth['engine'],
  { workspaceId, rows }: { workspaceId: string; rows: readonly KeptCells[] },
): Promise<void> {
  if (engine === 'sqlite') {
    let together: unknown[][] = []
    const write = async () => {
      if (together.length > 0)
        await transaction.$executeRawUnsafe(inOneParameter, workspaceId, JSON.stringify(together))
      together = []
    }
    for (const row of rows) {
      const all = [...row.cells, moment(row.receivedAt), row.person]
      if ((bodyIn(row.cells)?.length ?? 0) < alone) together.push(all)
      else {
        await write()
        await transaction.$executeRawUnsafe(cellByCell, workspaceId, ...all)
      }
    }
    await write()
    return
  }
  await transaction.fieldRecord.createMany({
    data: rows.map((row) => ({
      ...dataOf(row.cells),
      ...{ workspaceId, receivedAt: row.receivedAt, person: row.person },
    })),
  })
}
