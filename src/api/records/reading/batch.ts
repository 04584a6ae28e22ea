import type { Cells } from '../../../store/types.ts'
import { mostRows } from '../../contracts/scouting/index.ts'
import { ApiError, type Failure } from '../../errors.ts'
import { parsed } from '../../http/json.ts'
import { type Refused, readRow } from '../rows.ts'

export type RowRead = Cells | Refused

/** A body as it was sent, its rows read; or why it can not be read at all. */
export type BatchRead = { body: unknown; rows: RowRead[] | null } | { failure: Failure }

/** The rows of a body are taken out of it. What has no list of rows, or one that is too long, is left for its contract to refuse. */
export function readBatch(text: string): BatchRead {
  try {
    const body = parsed(text)
    const rows = (body as { rows?: unknown } | null)?.rows
    if (!Array.isArray(rows) || rows.length > mostRows) return { body, rows: null }
    return { body: { ...(body as object), rows: [] }, rows: rows.map(readRow) }
  } catch (error) {
    if (error instanceof ApiError) return { failure: error.failure }
    throw error
  }
}
