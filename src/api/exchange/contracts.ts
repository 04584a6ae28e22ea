import * as z from 'zod'
import { contentParts, type WrittenContents } from '../../model/event/archive/index.ts'
import { format, game, id, list, revision } from '../contracts/index.ts'
import {
  eventRecord,
  hash,
  keptForecast,
  keptLine,
  matchResult,
  storedMoment as moment,
  phase,
  row,
  scheduledMatch,
  seat,
  uuid,
} from '../contracts/scouting/index.ts'

/** Largest file of an event that is read: some 60 teams with four photos each are 70 MB (bytes). */
export const mostFileBytes = 200_000_000

const person = id.nullable().describe('Id of the person')
const note = z.string().max(5000).nullable()
const reason = z.string().max(2000).nullable()

const kept = { row, hash, receivedAt: moment, person }

/** Records of one event at most. */
export const mostRecords = 200_000

export const keptRecord = z.strictObject({ ...kept, replaces: uuid.nullable() })

export const eventContents = z
  .strictObject({
    event: list(
      z.strictObject({ revision, body: eventRecord, note, savedAt: moment }),
      1,
      100_000,
      'All revisions of the event, oldest first',
    ),
    rules: list(
      z.strictObject({ revision, body: game }),
      0,
      10_000,
      'Of the game: the revisions that records name, and the newest; oldest first',
    ),
    matches: list(
      z.strictObject({ match: scheduledMatch, revision, changedAt: moment, removed: z.boolean() }),
      0,
      5000,
      'Matches, those that were taken out too',
    ),
    results: list(
      z.strictObject({
        ...{ match: id, revision, enteredAt: moment, person },
        result: matchResult.nullable().describe('Null: taken back'),
      }),
      0,
      50_000,
      'Every state of each result',
    ),
    assignments: list(z.strictObject({ match: id, seat, person, since: moment }), 0, 30_000, 'Who watches whom'),
    records: list(keptRecord, 0, mostRecords, 'What was recorded, in the order of its arrival'),
    apart: list(
      z.strictObject({
        ...kept,
        reason: z.enum(['otherContent', 'unknownEvent']),
        resolution: z.enum(['kept', 'replaced', 'setAside']).nullable(),
        resolvedAt: moment.nullable(),
        resolvedBy: person,
      }),
      0,
      50_000,
      'Rows that were kept apart, and what became of them',
    ),
    choices: list(
      z.strictObject({ match: id, team: id, record: uuid.nullable(), person, reason, chosenAt: moment }),
      0,
      50_000,
      'Which of several records of a robot counts, oldest first',
    ),
    drills: list(
      z.strictObject({ id, startedAt: moment, endedAt: moment.nullable(), startedBy: person }),
      0,
      10_000,
      'Rehearsals',
    ),
    // Archives from before forecasts were kept have none.
    forecasts: list(
      keptForecast,
      0,
      100_000,
      'Forecasts as they were shown before their matches, oldest first',
    ).optional(),
    // Nor a selection.
    selection: list(keptLine, 0, 10_000, 'What was called out at the selection, oldest first').optional(),
    people: list(z.strictObject({ id, nickname: z.string().min(1).max(200) }), 0, 10_000, 'Nicknames by id'),
  })
  .meta({ id: 'EventContents', description: 'Everything of one event' })
eventContents satisfies z.ZodType<WrittenContents>

export const eventArchive = z
  .strictObject({
    format,
    archive: z.literal('event'),
    hash: hash.describe('SHA-256 of the canonical JSON of contents: keys in order, no spaces (RFC 8785)'),
    contents: eventContents,
  })
  .meta({ id: 'EventArchive', description: 'A whole event as one file' })

/** What is looked at first: that the file arrived as it was written. */
export const archiveHead = z.looseObject({
  format,
  archive: z.literal('event'),
  hash,
  contents: z.record(z.string(), z.unknown()),
})

export const preview = z.boolean().optional().describe('True: says what it would change, and changes nothing')

const count = z.int().min(0)
export const bringReport = z
  .strictObject({
    event: z.strictObject({ id: z.string(), name: z.string() }),
    fresh: z.boolean().describe('Whether the event is new here'),
    back: z.boolean().describe('Whether it had been removed here, and comes back'),
    parts: z.array(z.strictObject({ part: z.enum(contentParts), added: count, already: count })),
    conflicts: z
      .array(z.string())
      .describe('Records whose ids are taken by other content: both are kept, and a lead decides'),
    differs: z
      .array(
        z.strictObject({
          ...{ part: z.enum(contentParts), id: z.string() },
          match: z.strictObject({ phase, number: z.int(), play: z.int() }).optional(),
          detail: z.string().optional(),
        }),
      )
      .describe('What is here and says something else than the file: it stays as it is'),
  })
  .meta({ id: 'BringReport', description: 'What bringing a file in changes, or would change' })
