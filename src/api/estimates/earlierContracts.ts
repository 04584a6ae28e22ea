import * as z from 'zod'
import { estimate } from '../contracts/compute/estimate.ts'
import { id, list } from '../contracts/index.ts'
import { measure } from '../contracts/primitives.ts'
import { mostTeams } from '../contracts/scouting/event.ts'
import { team } from '../contracts/scouting/index.ts'

export const earlierOffered = z
  .array(
    z.strictObject({
      event: id,
      name: z.string(),
      startsOn: z.string().nullable(),
      teams: z.int().describe('Teams of this event that were seen there'),
      matches: z.int().describe('Its matches in which something was seen of them'),
    }),
  )
  .meta({ id: 'EarlierOffered', description: 'Events of the same game that are stored here' })

export const earlierRequest = z.strictObject({
  event: id.describe('Id of the event'),
  earlier: id.describe('Id of the earlier event'),
  discount: measure(0, 1, 'What a match there counts'),
  changed: list(team, 0, mostTeams, 'Teams whose robot was changed since').optional(),
})

const believed = z.strictObject({ points: estimate, attempts: estimate })

export const earlierChanges = z
  .strictObject({
    teams: z.array(
      z.strictObject({
        team,
        matches: z.int().describe('Own matches at this event'),
        before: z.int().describe('Own matches at the earlier event'),
        worth: z.number().describe('What these count together, as matches of this event do'),
        changes: z.int().describe('Changes of its robot since its last match there, as far as they were told'),
        with: believed,
        without: believed,
      }),
    ),
  })
  .meta({ id: 'EarlierChanges', description: 'What an earlier event changes about what is believed of teams' })
