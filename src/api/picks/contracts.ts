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

export const orderRequest = z.strictObject({
  event,
  team: team.describe('Who invites'),
})

const believed = z
  .strictObject({ mean: z.number(), low: z.number(), high: z.number() })
  .describe('Mean, and where it lies with 80 %')
const part = z.union([
  z.strictObject({ kind: z.enum(['autonomous', 'finishing']) }),
  z.strictObject({ kind: z.literal('goal'), goal: id }),
])

export const pickOrder = z
  .strictObject({
    team: team.describe('Who invites'),
    supposed: z
      .boolean()
      .describe('No captain by the present ranks, before the selection: worked out as if it were the last one'),
    records: z.int().describe('Observations of matches behind it'),
    alliance: z.array(team).describe('Its alliance as it is'),
    replacement: team
      .nullable()
      .describe(
        'Whom gains are against: the best that it can expect to be still free at its next turn, or after the selection where it has none; null: nobody is left to invite',
      ),
    replacementFree: z.boolean().describe('False: nobody can be expected to be free, and it is the last of the order'),
    choices: z
      .array(
        z.strictObject({
          team,
          win: believed.describe('Chance that the completed alliance wins a match of the playoffs, a tie half'),
          gain: believed.describe('The same less that with the replacement'),
          error: z.number().describe('Standard error of the mean gain by the luck of the simulated matches'),
          better: z.number().nullable().describe('Chance that it gains more than the next; null for the last'),
          alliance: z.array(team).describe('The alliance as it is expected to be completed'),
          answers: z.array(z.int()).describe('Places among the needs of those that it answers'),
          free: z.number().nullable().describe('Chance that it is still free at the next turn; null: not worked out'),
        }),
      )
      .describe('Whom to invite first'),
    needs: z
      .array(z.strictObject({ part, short: believed.describe('Points a robot'), chance: z.number() }))
      .describe('What the alliance brings less of than those that it may meet'),
    opponents: z
      .array(z.array(team))
      .describe('Alliances that it is compared against, as they are expected to be formed'),
  })
  .meta({ id: 'PickOrder', description: 'Whom to invite first as the selection stands' })
