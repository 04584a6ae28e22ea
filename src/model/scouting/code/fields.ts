import type { Observation } from '../types.ts'
import type { Reader, Writer } from './bytes.ts'
import { CodeError } from './failure.ts'
import { type IdTable, readId, readNullableId, writeId } from './ids.ts'
import { readTaps, writeTaps } from './taps.ts'
import { readNumber, readText, readUuid, writeNumber, writeText, writeUuid } from './values.ts'

/** What not every record has. */
export type FieldOf = Pick<
  Observation,
  | 'replaces'
  | 'absent'
  | 'startSpot'
  | 'leftStart'
  | 'routine'
  | 'driver'
  | 'robotRevision'
  | 'departedAt'
  | 'timeline'
  | 'counts'
  | 'finish'
  | 'defence'
  | 'lostSeconds'
  | 'stoppedAt'
  | 'fouls'
  | 'note'
> & { reason?: string | undefined }

/** How a field is written and read again. */
interface Coding<T> {
  write(writer: Writer, value: T, table: IdTable): void
  read(reader: Reader, table: IdTable): T
}

const number: Coding<number> = { write: writeNumber, read: readNumber }
const id: Coding<string> = { write: writeId, read: readId }
const text: Coding<string> = { write: writeText, read: readText }
const truth: Coding<boolean> = {
  write: (writer, value) => writer.byte(value ? 1 : 0),
  read: (reader) => reader.byte() === 1,
}

const periods = ['auto', 'teleop'] as const
const received = ['none', 'some', 'heavy'] as const

function oneOf<T>(values: readonly T[], index: number): T {
  const value = values[index]
  if (value === undefined) throw new CodeError('damaged')
  return value
}

type Counts = NonNullable<Observation['counts']>

const counts: Coding<Counts> = {
  write(writer, list, table) {
    writer.whole(list.length)
    for (const { goal, period, scored, missed } of list) {
      writeId(writer, goal, table)
      writer.whole(scored * 2 + periods.indexOf(period)).whole(missed)
    }
  },
  read(reader, table) {
    const list: Counts = []
    for (let left = reader.whole(); left > 0; left--) {
      const goal = readId(reader, table)
      const head = reader.whole()
      list.push({ goal, period: oneOf(periods, head % 2), scored: Math.floor(head / 2), missed: reader.whole() })
    }
    return list
  },
}

const codings: { [Key in keyof Required<FieldOf>]: Coding<NonNullable<FieldOf[Key]>> } = {
  replaces: { write: writeUuid, read: readUuid },
  absent: truth,
  startSpot: id,
  leftStart: truth,
  routine: id,
  driver: id,
  robotRevision: number,
  departedAt: number,
  timeline: { write: writeTaps, read: readTaps },
  counts,
  finish: {
    write(writer, { attempted, achieved }, table) {
      writeId(writer, attempted, table)
      writeId(writer, achieved, table)
    },
    read: (reader, table) => ({ attempted: readNullableId(reader, table), achieved: readNullableId(reader, table) }),
  },
  defence: {
    write(writer, value) {
      writer.byte(received.indexOf(value.received))
      writeNumber(writer, value.playedSeconds)
    },
    read(reader) {
      const heavy = oneOf(received, reader.byte())
      return { playedSeconds: readNumber(reader), received: heavy }
    },
  },
  lostSeconds: number,
  stoppedAt: number,
  fouls: {
    write: (writer, { minor, major }) => writer.whole(minor).whole(major),
    read: (reader) => ({ minor: reader.whole(), major: reader.whole() }),
  },
  note: text,
  reason: text,
}

/** In the order of their bits: a new field comes last, and with it a new version. */
const keys = Object.keys(codings) as (keyof FieldOf)[]
const width = Math.ceil(keys.length / 8)

/** Which fields are there, as bits; then those. */
export function writeFields(writer: Writer, fields: FieldOf, table: IdTable): void {
  const there = keys.filter((key) => fields[key] !== undefined)
  writer.fixed(
    there.reduce((bits, key) => bits + 2 ** keys.indexOf(key), 0),
    width,
  )
  for (const key of there) (codings[key] as Coding<unknown>).write(writer, fields[key], table)
}

export function readFields(reader: Reader, table: IdTable): FieldOf {
  const bits = reader.fixed(width)
  if (bits >= 2 ** keys.length) throw new CodeError('damaged')
  const there = keys.filter((_, index) => Math.floor(bits / 2 ** index) % 2 === 1)
  // One after the other, in the order they were written in.
  return Object.fromEntries(there.map((key) => [key, (codings[key] as Coding<unknown>).read(reader, table)]))
}
