import * as z from 'zod'
import { id } from '../contracts/index.ts'
import { observation, row, seat, sequence, uuid } from '../contracts/scouting/index.ts'
import { namedPerson } from '../people/contracts.ts'

const reason = z.string().min(1).max(500).describe('Why; kept with it')
const event = id.describe('Id of the event')
const moment = z.string().describe('ISO 8601')

export const ofEvent = z.strictObject({ event })

const changeable = observation
  .pick({
    match: true,
    team: true,
    identifiedBy: true,
    absent: true,
    leftStart: true,
    timeline: true,
    counts: true,
    finish: true,
    defence: true,
    lostSeconds: true,
    stoppedAt: true,
    departedAt: true,
    fouls: true,
    note: true,
  })
  .partial()

export const correctRequest = z.strictObject({
  event,
  record: uuid.describe('Id of the observation that is in force'),
  changes: changeable.describe('What is otherwise; all else stays'),
  clear: z
    .array(
      z.enum([
        'absent',
        'leftStart',
        'timeline',
        'counts',
        'finish',
        'defence',
        'lostSeconds',
        'stoppedAt',
        'departedAt',
        'fouls',
        'note',
      ]),
    )
    .max(20)
    .optional()
    .describe('What it should not say at all'),
  seat: seat.optional(),
  reason,
})

export const observationsRequest = z.strictObject({
  event,
  match: id.optional().describe('Id of the match; left out: runs outside of matches'),
})

export const observations = z
  .array(
    z.strictObject({
      arrival: z.int(),
      receivedAt: moment,
      row,
      replaces: z.string().nullable().describe('Id of the record that this one takes the place of'),
      person: z.string().nullable().describe('Who handed it in'),
      team: z.string().describe('Whom it is about by the schedule as it is now'),
      counts: z.boolean().describe('False: a lead let another record of this robot count alone'),
    }),
  )
  .meta({ id: 'ObservationsInForce', description: 'Observations that no other has taken the place of' })

export const swapRequest = z.strictObject({
  event,
  match: id,
  records: z
    .array(uuid)
    .min(1)
    .max(40)
    .describe(
      'All records in force of the two robots in that match, so that nothing is swapped that was not looked at',
    ),
  reason,
})

export const done = z.strictObject({ added: z.array(z.string()).describe('Ids of the records that took the place') })

export const apartRecord = z
  .strictObject({
    arrival: z.int().describe('Names it'),
    receivedAt: moment,
    row,
    hash: z.string(),
    reason: z.enum(['otherContent', 'unknownEvent']),
    person: z.string().nullable().describe('Who handed it in'),
    resolution: z.enum(['kept', 'replaced', 'setAside']).nullable(),
    resolvedAt: moment.nullable(),
    resolvedBy: z.string().nullable(),
    ours: row.nullable().describe('What has the same id and came first'),
  })
  .meta({ id: 'QuarantinedRecord' })

export const resolveRequest = z.strictObject({
  event,
  arrival: sequence.describe('Names the row that was kept apart'),
  resolution: z
    .enum(['kept', 'replaced', 'setAside'])
    .describe('kept: ours stays; replaced: theirs takes its place, as a correction; setAside: neither'),
  before: z
    .enum(['kept', 'replaced', 'setAside'])
    .optional()
    .describe('What was decided before and is decided anew by this; left out: it is the first decision'),
  reason: reason.optional(),
})

export const chooseRequest = z.strictObject({
  event,
  match: id,
  team: id,
  record: uuid.nullable().describe('Id of the record that counts alone; null: all again'),
  reason: reason.optional(),
})

export const choice = z
  .strictObject({
    match: z.string(),
    team: z.string(),
    record: z.string().nullable(),
    person: z.string().nullable(),
    reason: z.string().nullable(),
    chosenAt: moment,
  })
  .meta({ id: 'RecordChoice', description: 'Which record of a robot counts; the newest of a robot is in force' })

export const drill = z
  .strictObject({
    id: z.string(),
    startedAt: moment,
    endedAt: moment.nullable(),
    startedBy: z.string().nullable(),
  })
  .meta({ id: 'Drill', description: 'A rehearsal: phones go without network, record something and come back' })

export const drillRequest = z.strictObject({ event, drill: id })

const phone = z.strictObject({
  device: z.string(),
  name: z.string(),
  person: z.string(),
  nickname: z.string(),
  lastSeenAt: moment,
  silent: z.int().min(0).describe('For how long the server has not heard of it (s), give or take a minute'),
  form: z.int().nullable().describe('Revision of the game that its newest record here was made with'),
  signedOut: z.boolean().describe('It is told here only as long as it holds something'),
  unsent: z.int().describe('Records that it said it still holds'),
  held: z.int().describe('Records of this event that came from it'),
  drill: z
    .enum(['passed', 'notSeen', 'noRecord', 'holds'])
    .nullable()
    .describe('How the running or last drill went on it; null where there was none'),
})

export const board = z
  .strictObject({
    matches: z.array(
      z.strictObject({
        match: z.string(),
        played: z.boolean(),
        seats: z.array(
          z.strictObject({
            seat,
            team: z.string(),
            person: z.string().nullable().describe('Who was to watch'),
            state: z.enum(['received', 'expected', 'late', 'unwatched']),
            records: z.array(z.string()).describe('Ids of the records in force'),
            chosen: z.string().nullable().describe('Id of the one that counts alone by a lead’s choice; null: all do'),
          }),
        ),
      }),
    ),
    phones: z.array(phone),
    contradictions: z.array(
      z.looseObject({
        kind: z.string(),
        records: z.array(z.string()),
        match: z.string().nullable(),
        team: z.string().nullable(),
      }),
    ),
    corrections: z.array(
      z.strictObject({
        record: z.string(),
        replaces: z.string(),
        match: z.string().nullable(),
        team: z.string().nullable(),
        person: z.string().nullable(),
        reason: z.string().nullable(),
        receivedAt: moment,
      }),
    ),
    quarantined: z.int().describe('Rows that wait for a lead'),
    drill: drill.nullable(),
    people: z.array(namedPerson),
  })
  .meta({ id: 'RecordsBoard', description: 'What was expected and what has arrived' })
