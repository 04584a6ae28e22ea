import * as z from 'zod'
import { id } from '../contracts/index.ts'

const part = z.strictObject({ mean: z.number(), share: z.number().describe('Of the number, 0 to 1') })

const matches = z.array(
  z.strictObject({
    match: id,
    earlier: z
      .literal(true)
      .optional()
      .describe('A match of the earlier event that counts here; its id is of that event'),
    records: z.array(z.string()).describe('Ids of the records behind it'),
    value: z.number().describe('What this match says: pieces of a whole match, a share of tries, seconds'),
    seen: z.number().describe('How much of it was seen: whole matches, tries, trips'),
    weight: z.number().describe('1; less for one that lies back or before a change of the robot'),
  }),
)

const made = z
  .strictObject({
    matches: matches.describe('Own matches that say something about it'),
    own: part.nullable().describe('Mean of own matches'),
    claimed: part.nullable().describe('What the team says of itself'),
    event: part.describe('What is usual at the event'),
  })
  .meta({ id: 'Made', description: 'A number as the mean of what own matches, the team and the event say' })

export const madeOfTeam = z
  .strictObject({
    attempts: made,
    running: z
      .array(z.strictObject({ match: id, mean: z.number(), interval80: z.tuple([z.number(), z.number()]) }))
      .describe('Pieces tried as believed after each own match, with the event as it is known now'),
    goals: z
      .record(id, z.strictObject({ placed: matches, success: made, autonomous: made }))
      .describe('Pieces placed, share that hits, pieces that hit in autonomous'),
    trip: made.nullable().describe('Seconds from trip to trip; means are of logarithms'),
    finish: z.record(z.string(), made),
    leaves: made,
    stops: made,
    absent: made,
    departs: made,
  })
  .meta({ id: 'MadeOfTeam', description: 'What the numbers of a team are made of' })
