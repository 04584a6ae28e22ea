import * as z from 'zod'
import type { Row, RowAnswer } from '../../../model/scouting/types.ts'
import { id, list } from '../primitives.ts'
import { observation } from './observation.ts'
import { device, moment, note, scout, seat, sequence, uuid } from './shared.ts'
import { change, photo, pitVisit, ranking } from './visit.ts'

const way = {
  id: uuid,
  event: id.describe('Id of the event'),
  device,
  sequence,
  scout,
  made: moment.describe('By the phone’s clock: shown to people, never used to order anything'),
  seat: seat.optional(),
  reason: note.optional().describe('Why it corrects another'),
}

/** A row of a phone's outbox. */
export const row = z
  .discriminatedUnion('kind', [
    z.strictObject({ ...way, kind: z.literal('observation'), body: observation }),
    z.strictObject({ ...way, kind: z.literal('visit'), body: pitVisit }),
    z.strictObject({ ...way, kind: z.literal('ranking'), body: ranking }),
    z.strictObject({ ...way, kind: z.literal('change'), body: change }),
    z.strictObject({ ...way, kind: z.literal('photo'), body: photo }),
    z.strictObject({ ...way, kind: z.literal('drill'), body: z.strictObject({ drill: id }) }),
    z.strictObject({ ...way, kind: z.literal('withdrawal'), body: z.strictObject({ record: uuid }) }),
  ])
  .meta({ id: 'Row', description: 'A record with what belongs to its way from a phone to the server' })
row satisfies z.ZodType<Row>

/** Rows of one request at most. */
export const mostRows = 200

const head = z.object({ id: z.string() })

export const rowAnswer = z
  .discriminatedUnion('outcome', [
    head.extend({ outcome: z.literal('held'), again: z.boolean().describe('It was there already') }).strict(),
    head.extend({ outcome: z.literal('quarantined'), why: z.string() }).strict(),
    head.extend({ outcome: z.literal('refused'), why: z.string() }).strict(),
  ])
  .meta({ id: 'RowAnswer', description: 'What became of a row' })
rowAnswer satisfies z.ZodType<RowAnswer>

export const receipt = z
  .strictObject({
    held: z.int().describe('Records of this device that the server holds'),
    quarantined: z.int().describe('Of it, kept apart until a lead decides'),
    at: z.string().describe('ISO 8601'),
  })
  .meta({ id: 'Receipt' })

export const rowAnswers = list(rowAnswer, 0, mostRows, 'In the order of the rows')
