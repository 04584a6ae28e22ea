import { hashed } from '../../src/api/records/rows.ts'
import { cellsOf, type Row } from '../../src/model/scouting/index.ts'
import type { Batch } from '../../src/store/types.ts'

/** Rows as nobody who is signed in hands them in. */
export const batchOf = (rows: readonly Row[], device: string): Batch => ({
  ...{ device, person: null, session: null, unsent: 0 },
  rows: rows.map((row) => cellsOf(hashed(row))),
})
