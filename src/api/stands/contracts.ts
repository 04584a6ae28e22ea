import * as z from 'zod'
import type { Assignment, EventRecord, Match } from '../../model/scouting/index.ts'
import { game, id } from '../contracts/index.ts'
import { count } from '../contracts/primitives.ts'
import { eventRecord, happening, scheduledMatch, seat } from '../contracts/scouting/index.ts'
import type { Stored } from '../documents/read.ts'

const mark = z.string().describe('Changes with the contents: whoever has this one needs nothing new')
const serverTime = z.string().describe('ISO 8601')

/** Everything that a phone needs to record without a connection. */
export interface Pack {
  event: EventRecord
  game: { revision: number; body: Stored<'game'>['body'] }
  matches: Match[]
  assignments: Assignment[]
  people: { id: string; nickname: string }[]
}

export const packRequest = z.strictObject({
  event: id.describe('Id of the event'),
  since: z.string().max(100).optional().describe('The mark that the phone has'),
})

export const packAnswer = z
  .union([
    z.strictObject({ same: z.literal(true), serverTime, mark }),
    z.strictObject({
      event: eventRecord,
      game: z.strictObject({ revision: z.int(), body: game }),
      matches: z.array(scheduledMatch).describe('In the order of play'),
      assignments: z.array(z.strictObject({ match: id, seat, person: id.nullable() })),
      people: z.array(z.strictObject({ id, nickname: z.string() })).describe('Whose ids the assignments name'),
      serverTime,
      mark,
    }),
  ])
  .meta({ id: 'StandsPack', description: 'What a phone in the stands keeps, so that it records without a connection' })

export const eventsAnswer = z.array(
  z.strictObject({ id: z.string(), name: z.string(), startsOn: z.string().nullable().describe('ISO 8601') }),
)

export const trainingRequest = z.strictObject({
  event: id.describe('Id of the event'),
  seed: count(0, 1_000_000_000, 'Another match for each seed, the same for the same one'),
})

export const trainingAnswer = z
  .strictObject({
    robots: z
      .array(
        z.strictObject({
          came: z.boolean(),
          track: z
            .array(z.tuple([z.number(), z.number(), z.number()]))
            .describe('[s, m, m] in its own alliance’s coordinates; between two it goes straight'),
          happened: z.array(happening).describe('What a scout could tap'),
        }),
      )
      .describe('Red’s three, then blue’s'),
  })
  .meta({ id: 'TrainingMatch', description: 'A simulated match to train on' })
