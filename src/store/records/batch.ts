import { unpackRows } from '../../model/scouting/cells.ts'
import type { Batch, Cells, SharedRows } from './types.ts'

const isShared = (rows: Batch['rows']): rows is SharedRows => 'heads' in rows

/** How many rows it has. */
export const sizeOf = ({ rows }: Batch): number => (isShared(rows) ? rows.count : rows.length)

export function rowsOf({ rows }: Batch): readonly Cells[] {
  if (!isShared(rows)) return rows
  const { bodies } = rows
  return unpackRows({
    ...rows,
    bodies: bodies && Buffer.from(bodies.buffer, bodies.byteOffset, bodies.byteLength).toString(),
  })
}
