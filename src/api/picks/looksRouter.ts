import * as z from 'zod'
import { id, list } from '../contracts/index.ts'
import { count } from '../contracts/primitives.ts'
import { seat, team } from '../contracts/scouting/index.ts'
import { procedure } from '../trpc.ts'
import { may } from '../who.ts'
import { looksIn } from './looks.ts'

const looksRequest = z.strictObject({
  event: id.describe('Id of the event'),
  team: team.describe('Who decides'),
  people: list(id, 0, 100, 'Ids of those who are free to look').optional(),
  longest: count(1, 100, 'Most matches that somebody watches without a break').optional(),
  rest: count(1, 100, 'Matches in a row without watching that make a break').optional(),
  pause: count(1, 1440, 'Minutes without a match in which everybody rests').optional(),
})

const looksAnswer = z
  .strictObject({
    decision: z
      .strictObject({
        seed: z.int().describe('Our place among the captains as it is taken'),
        alliances: z.int(),
        replacement: team.nullable(),
      })
      .describe('Whom we invite first'),
    teams: z
      .array(
        z.strictObject({
          team,
          mean: z.number().describe('Chance to win that it gains over the replacement'),
          sd: z.number().describe('How far that is not known'),
          worth: z.number().describe('By how much one look is expected to better the choice, in chance to win'),
          matches: z.int().describe('Matches in which it was seen'),
          next: id.nullable().describe('Its next match in which nobody is to watch it'),
        }),
      )
      .describe('Those first at whom a look is worth most'),
    looks: z.array(z.strictObject({ match: id, team, person: id, worth: z.number() })).describe('In the order of play'),
    assignments: z.array(z.strictObject({ match: id, seat, person: id.nullable() })).describe('The same as seats'),
    mark: z.string().describe('Of the assignments as they are'),
    coming: z.int().describe('Matches to come'),
    unwatched: z.int().describe('Robots in them whom nobody is to watch'),
  })
  .meta({ id: 'WhereToLook', description: 'Where one more look is worth most for whom we invite' })

export const looksProcedures = {
  where: procedure
    .meta({
      endpoint: {
        method: 'POST',
        path: '/api/events/{event}/looks',
        may: may.lead,
        audit: false,
        summary: 'Where one more look is worth most for whom we invite, and who could make it; nothing is saved',
        answer: looksAnswer,
        errors: ['malformed', 'notFound', 'unreachable', 'notOffered', 'busy', 'overBudget'],
      },
    })
    .input(looksRequest)
    .mutation(({ input, ctx }) => looksIn(ctx, input)),
}
