import type { Reader, Writer } from './bytes.ts'
import { crc32 } from './crc32.ts'
import { CodeError } from './failure.ts'
import { isUuid, readText, readUuid, writeText, writeUuid } from './values.ts'

/** A goal or a source. */
export interface Place {
  goal?: string
  source?: string
}

/** The ids of one revision of a game, which both sides know, so that a code needs to say their numbers only. */
export interface IdTable {
  /** Goals, then sources. */
  places: readonly Place[]
  /** Those, finishes and starts. */
  ids: readonly string[]
  /** Tells tables apart. */
  check: number
}

interface Named {
  id: string
}

/** The table of a game, in the order of its parts. */
export function idTable(game: {
  goals: readonly Named[]
  sources: readonly Named[]
  finishes: readonly Named[]
  starts: readonly Named[]
}): IdTable {
  const ids = [...game.goals, ...game.sources, ...game.finishes, ...game.starts].map(({ id }) => id)
  return {
    places: [...game.goals.map(({ id }) => ({ goal: id })), ...game.sources.map(({ id }) => ({ source: id }))],
    ids: [...new Set(ids)],
    check: crc32(new TextEncoder().encode(JSON.stringify([game.goals.length, ids]))) & 0xffff,
  }
}

/** Where no game is known: every id is written out. */
export const noTable: IdTable = { places: [], ids: [], check: 0 }

const [listed, uuid, number, text] = [0, 1, 2, 3]
const isPlainNumber = (id: string): boolean => /^(0|[1-9]\d{0,8})$/.test(id)

/** An id: its place in the table, the bytes of a UUID, a number, or its text. Null is a place of its own. */
export function writeId(writer: Writer, id: string | null, table: IdTable): void {
  const place = id === null ? 0 : table.ids.indexOf(id) + 1
  if (id === null || place > 0) writer.whole(place * 4 + listed!)
  else if (isUuid(id)) writeUuid(writer.whole(uuid!), id)
  else if (isPlainNumber(id)) writer.whole(Number(id) * 4 + number!)
  else writeText(writer.whole(text!), id)
}

export function readNullableId(reader: Reader, table: IdTable): string | null {
  const head = reader.whole()
  const value = Math.floor(head / 4)
  if (head % 4 === number) return String(value)
  if (head === uuid) return readUuid(reader)
  if (head === text) return readText(reader)
  if (head === listed) return null
  const id = table.ids[value - 1]
  if (head % 4 !== listed || id === undefined) throw new CodeError('damaged')
  return id
}

export function readId(reader: Reader, table: IdTable): string {
  const id = readNullableId(reader, table)
  if (id === null) throw new CodeError('damaged')
  return id
}
