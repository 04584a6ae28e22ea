import type { Observation, Row, Seat } from '../types.ts'
import type { Reader, Writer } from './bytes.ts'
import { CodeError } from './failure.ts'
import { type FieldOf, readFields, writeFields } from './fields.ts'
import { type IdTable, noTable, readId, readNullableId, writeId } from './ids.ts'
import { isUuid, readClock, readUuid, writeClock, writeUuid } from './values.ts'

type ObservationRow = Extract<Row, { kind: 'observation' }>

/** Whether the row and its body say the same of their way, so that it needs to be said once. */
export const isShort = ({ body, ...row }: ObservationRow): boolean =>
  body.id === row.id &&
  isUuid(row.id) &&
  (body.replaces === undefined || isUuid(body.replaces)) &&
  body.device === row.device &&
  body.sequence === row.sequence &&
  body.scout === row.scout

const origins = ['live', 'video', 'practice'] as const
const seats: readonly (Seat | undefined)[] = [
  undefined,
  ...(['red', 'blue'] as const).flatMap((alliance) => ([1, 2, 3] as const).map((position) => ({ alliance, position }))),
]
const seatIndex = (seat: Seat | undefined): number =>
  seats.findIndex((each) => each?.alliance === seat?.alliance && each?.position === seat?.position)

/** The first byte of flags: subject, origin, how it was identified, seat. */
function flagsOf({ body, seat }: ObservationRow): number {
  return (
    (body.subject === 'human' ? 1 : 0) +
    origins.indexOf(body.origin) * 2 +
    (body.identifiedBy === 'position' ? 8 : 0) +
    seatIndex(seat) * 16
  )
}

/**
 * Table's check (2), id (16), event and revision of the game, flags, sequence, device, scout, clock, match, team; then what
 * not every record has. The first four stand where every version has them, so that whoever reads knows which game it needs.
 */
export function writeObservation(writer: Writer, row: ObservationRow, table: IdTable): void {
  const { body } = row
  writer.fixed(table.check, 2)
  writeUuid(writer, row.id)
  writeId(writer, row.event, noTable)
  writer.whole(body.game).byte(flagsOf(row)).whole(row.sequence)
  writeId(writer, row.device, table)
  writeId(writer, row.scout, table)
  writeClock(writer, row.made)
  writeId(writer, body.match, table)
  writeId(writer, body.team, table)
  writeFields(writer, { ...body, reason: row.reason }, table)
}

function readFlags(flags: number): Pick<Observation, 'subject' | 'origin' | 'identifiedBy'> & { seat?: Seat } {
  const origin = origins[(flags >> 1) & 3]
  const seat = seats[flags >> 4]
  if (!origin || flags >> 4 >= seats.length) throw new CodeError('damaged')
  return {
    subject: flags & 1 ? 'human' : 'robot',
    origin,
    identifiedBy: flags & 8 ? 'position' : 'number',
    ...(seat && { seat }),
  }
}

export function readObservation(reader: Reader, table: IdTable): ObservationRow {
  if (reader.fixed(2) !== table.check) throw new CodeError('otherGame')
  const id = readUuid(reader)
  const event = readId(reader, noTable)
  const game = reader.whole()
  const { seat, ...flags } = readFlags(reader.byte())
  const sequence = reader.whole()
  const device = readId(reader, table)
  const scout = readId(reader, table)
  const made = readClock(reader)
  const match = readNullableId(reader, table)
  const team = readId(reader, table)
  const { reason, ...fields }: FieldOf = readFields(reader, table)
  return {
    id,
    kind: 'observation',
    event,
    device,
    sequence,
    scout,
    made,
    ...(seat && { seat }),
    ...(reason !== undefined && { reason }),
    body: { format: 1, id, match, team, scout, device, sequence, game, ...flags, ...fields },
  }
}
