import * as z from 'zod'
import { id, list } from '../contracts/primitives.ts'
import { calledLine, hash, keptLine, notedLine, team, uuid } from '../contracts/scouting/index.ts'

export const event = id.describe('Id of the event')
const after = uuid
  .nullable()
  .describe('Id of the newest line of this kind that was seen; null: none. Another one there now refuses all')

/** Lines that are written at once at most: what a phone without a connection has gathered. */
const most = 300

export const calledRequest = z.strictObject({ event, after, lines: list(calledLine, 1, most, 'In their order') })

/** Notes of a topic of their own each, so that they are sent apart. */
export const notedRequest = z.strictObject({ event, after, lines: list(notedLine, 1, most, 'All of one topic') })

export const selectionLines = z
  .strictObject({ lines: z.array(keptLine).describe('Oldest first; notes are for leads') })
  .meta({ id: 'SelectionLines', description: 'What was called out at the selection of an event' })

export const ratingsRequest = z.strictObject({
  event,
  since: hash.optional().describe('The mark that the browser has'),
})

const byDraw = z.array(z.number())
export const packedRating = z
  .strictObject({
    autonomous: byDraw.describe('Points of autonomous'),
    goals: z.array(byDraw).describe('Points by goal of teleop, in the game’s order'),
    pieces: z.array(byDraw).describe('Pieces by goal, those of autonomous included'),
    hits: z.array(byDraw).describe('Share of its pieces that hit, by goal'),
    finishes: z.array(byDraw).describe('Chance of each finish'),
  })
  .meta({ id: 'PackedRating', description: 'What a team is expected to do alone in a match, by common draw' })

export const ratings = z
  .strictObject({
    mark: hash.describe('Of what they are made from'),
    ratings: z
      .record(team, packedRating)
      .nullable()
      .describe('By team, 400 draws, of which draw d of all teams belongs together; null: the browser has them'),
  })
  .meta({ id: 'EventRatings', description: 'Teams of an event as selections and playoffs take them' })
