import { packRows } from '../../../model/scouting/cells.ts'
import type { Cells, SharedRows } from '../../../store/types.ts'
import { mostRows } from '../../contracts/scouting/index.ts'
import { ApiError, type Failure } from '../../errors.ts'
import { parsed } from '../../http/json.ts'
import { type Refused, readRow, readUsualRow } from '../rows.ts'

export type RowRead = Cells | Refused

/** A body as it was sent, its rows read; or why it can not be read at all. */
export type BatchRead = { body: unknown; rows: RowRead[] | null } | { failure: Failure }

/** The same, with rows that could all be read as threads share them. */
export type SharedRead = { body: unknown; rows: RowRead[] | SharedRows | null } | { failure: Failure }

/** The rows of a body are taken out of it. What has no list of rows, or one that is too long, is left for its contract to refuse. */
export function readBatch(text: string): BatchRead {
  try {
    return readQuick(text) ?? readAny(parsed(text))
  } catch (error) {
    if (error instanceof ApiError) return { failure: error.failure }
    throw error
  }
}

function readAny(body: unknown): BatchRead {
  const rows = rowsIn(body)
  return rows ? { body: { ...(body as object), rows: [] }, rows: rows.map(readRow) } : { body, rows: null }
}

function rowsIn(body: unknown): unknown[] | undefined {
  const rows = (body as { rows?: unknown } | null)?.rows
  return Array.isArray(rows) && rows.length <= mostRows ? rows : undefined
}

/**
 * A body of nothing but usual observations. Undefined: the text has to be looked at closely. Whatever was read here is no deeper than
 * a record, so that its depth need not be counted, which would take as long again as reading it.
 */
function readQuick(text: string): BatchRead | undefined {
  let body: unknown
  try {
    body = JSON.parse(text)
  } catch {
    return undefined
  }
  const sent = rowsIn(body)
  if (!sent) return undefined
  const of = body as { [name: string]: unknown }
  if (Object.keys(of).some((name) => name !== 'rows' && typeof of[name] === 'object')) return undefined
  const rows: Cells[] = []
  for (const each of sent) {
    const read = readUsualRow(each)
    if (read === undefined) return undefined
    rows.push(read)
  }
  return { body: { ...of, rows: [] }, rows }
}

const isCells = (row: RowRead): row is Cells => Array.isArray(row)

/** In memory that all threads see, so that what is large is nowhere copied on its way. */
export function sharedBytes(content: string | Uint8Array): Uint8Array<SharedArrayBuffer> {
  const bytes = Buffer.from(new SharedArrayBuffer(Buffer.byteLength(content)))
  if (typeof content === 'string') bytes.write(content)
  else bytes.set(content)
  return new Uint8Array(bytes.buffer as unknown as SharedArrayBuffer)
}

export function readShared(text: string): SharedRead {
  const read = readBatch(text)
  if ('failure' in read || !read.rows?.every(isCells)) return read
  const packed = packRows(read.rows)
  return { body: read.body, rows: { ...packed, bodies: sharedBytes(packed.bodies!) } }
}
