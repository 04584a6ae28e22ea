import { type Row, recordKinds } from '../types.ts'
import { Reader, Writer } from './bytes.ts'
import { CodeError } from './failure.ts'
import { type IdTable, noTable, readId } from './ids.ts'
import { isShort, readObservation, writeObservation } from './observation.ts'
import { readText, readUuid, writeText } from './values.ts'

/** Of how a row is written. A reader takes its own and older ones, and says of a newer one that it is newer. */
export const version = 1
const [short, plain] = [0, 1]

type Json = null | boolean | number | string | Json[] | { [key: string]: Json | undefined }

/** JSON with sorted names: the same for the same content. */
function sorted(value: Json | undefined): string {
  if (Array.isArray(value)) return `[${value.map(sorted).join()}]`
  if (value === null || typeof value !== 'object') return JSON.stringify(value)
  const kept = Object.keys(value).filter((key) => value[key] !== undefined)
  return `{${kept
    .sort()
    .map((key) => `${JSON.stringify(key)}:${sorted(value[key])}`)
    .join()}}`
}

/** Whether two rows have the same content; the order of their fields is none, nor is a field that is there and undefined. */
export const sameRow = (a: Row, b: Row): boolean => sorted(a as unknown as Json) === sorted(b as unknown as Json)

function packShort(row: Row, table: IdTable): Uint8Array | null {
  if (row.kind !== 'observation' || !isShort(row)) return null
  const writer = new Writer().byte(version * 16 + short!)
  writeObservation(writer, row, table)
  const bytes = writer.done()
  // What the short form has no room for (a field of a later version, say) is noticed here and written out below.
  try {
    return sameRow(unpackRow(bytes, table), row) ? bytes : null
  } catch {
    return null
  }
}

/**
 * A row of an outbox as bytes: an observation in its short form, some 100 bytes and 3 for each tap; anything else, and what
 * the short form can not say exactly, as its JSON text.
 */
export function packRow(row: Row, table: IdTable): Uint8Array {
  const bytes = packShort(row, table)
  if (bytes) return bytes
  const writer = new Writer().byte(version * 16 + plain!)
  writeText(writer, JSON.stringify(row))
  return writer.done()
}

function formOf(reader: Reader): number {
  const head = reader.byte()
  if (head >> 4 > version) throw new CodeError('newer')
  if (head >> 4 !== version || (head & 15) > plain!) throw new CodeError('damaged')
  return head & 15
}

/** What must be known before a row can be read: null, where it is nothing. */
export function peekRow(bytes: Uint8Array): { event: string; game: number; check: number } | null {
  const reader = new Reader(bytes)
  if (formOf(reader) === plain) return null
  const check = reader.fixed(2)
  readUuid(reader)
  return { check, event: readId(reader, noTable), game: reader.whole() }
}

function readPlain(reader: Reader): Row {
  const text = readText(reader)
  let found: unknown
  try {
    found = JSON.parse(text)
  } catch {
    throw new CodeError('damaged')
  }
  const kind = (found as { kind?: unknown } | null)?.kind
  if (!recordKinds.some((known) => known === kind)) throw new CodeError('damaged')
  return found as Row
}

/** The row that `packRow` was given, to the last digit. The server checks its contents, as it does with rows from the network. */
export function unpackRow(bytes: Uint8Array, table: IdTable): Row {
  const reader = new Reader(bytes)
  const row = formOf(reader) === plain ? readPlain(reader) : readObservation(reader, table)
  reader.end()
  return row
}
