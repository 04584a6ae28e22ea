import * as z from 'zod'
import { recordKinds } from '../../model/scouting/index.ts'
import { id } from '../contracts/index.ts'
import { device, mostRows, receipt, row, rowAnswers, team } from '../contracts/scouting/index.ts'

/** Records that are read at once at most. */
export const mostRead = 1000

// The rows are looked at one by one, so that one that can not be read does not keep the others from being taken.
const anyRow = z.unknown().meta({ override: { $ref: '#/components/schemas/Row' } })

export const acceptRequest = z.strictObject({
  device: device.describe('Device that hands the rows in'),
  unsent: z.int().min(0).max(1_000_000).describe('Rows that it holds besides these, not acknowledged yet'),
  app: z.string().max(40).optional().describe('Version of the program that runs there'),
  rows: z.array(anyRow).max(mostRows).describe('Oldest first; each is answered by itself'),
})

export const accepted = z
  .strictObject({
    answers: rowAnswers.describe('In the order of the rows. What is held is committed and synced to disk'),
    receipt,
  })
  .meta({ id: 'RecordsAccepted' })

const told = 'Only records of these kinds: observation,visit or the name several times; all where nothing is said'

// An address has no lists of its own: names with commas, or the same field again.
const kinds = z
  .preprocess(
    (value) => (typeof value === 'string' || Array.isArray(value) ? [value].flat().join(',').split(',') : value),
    z.array(z.enum(recordKinds)).min(1).max(recordKinds.length),
  )
  .meta({ description: told, override: { type: 'array', items: { type: 'string', enum: [...recordKinds] } } })

export const listRequest = z.strictObject({
  event: id.describe('Id of the event'),
  after: z.int().min(0).optional().describe('Arrival of the last record that is known already'),
  limit: z.int().min(1).max(mostRead).optional().describe(`Records at once, ${mostRead} where nothing is said`),
  kinds: kinds.optional(),
})

export const storedRecord = z
  .strictObject({
    arrival: z.int().describe('Counts up with each record that arrives; gaps mean nothing'),
    receivedAt: z.string().describe('ISO 8601, by the server’s clock'),
    row,
    hash: z.string().describe('SHA-256 of the row’s canonical JSON'),
    replaces: z.string().nullable().describe('Id of the record that this one takes the place of'),
    person: z.string().nullable().describe('Who handed it in'),
    team: team
      .nullable()
      .describe('Whom it is about by the schedule as it is now; null where it is about no single team'),
  })
  .meta({ id: 'StoredRecord' })

export const recordList = z
  .strictObject({
    records: z.array(storedRecord).describe('In the order in which they arrived'),
    next: z.int().nullable().describe('What to ask with as `after` for the rest; null at the end'),
  })
  .meta({ id: 'RecordList' })
