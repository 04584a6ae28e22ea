import * as z from 'zod'
import { losses } from '../../model/event/after/index.ts'
import { estimate } from '../contracts/compute/estimate.ts'
import { fieldLegRef } from '../contracts/compute/field.ts'
import { id } from '../contracts/index.ts'
import { alliance, phase, team } from '../contracts/scouting/index.ts'

const of = {
  event: id.describe('Id of the event'),
  design: id.optional().describe('Id of the design of the robot; that of the newest decision where nothing is said'),
}

export const afterRequest = z.strictObject({ ...of, team })

const interval = z.tuple([z.number(), z.number()])
const named = z.strictObject({ id, name: z.string() })

const afterMatch = z.strictObject({
  match: id,
  alliance,
  forecast: z
    .strictObject({ win: z.number().describe('Chance of ours, a tie half'), mean: z.number(), interval80: interval })
    .nullable(),
  state: z.enum(['scored', 'waiting', 'voided', 'late', 'otherTeams', 'gone', 'notForecast']),
  result: z.strictObject({ ours: z.number(), theirs: z.number() }).nullable(),
})

const question = z.discriminatedUnion('code', [
  z.strictObject({ code: z.literal('slowLeg'), leg: fieldLegRef, seconds: z.number(), trips: z.int() }),
  z.strictObject({ code: z.enum(['slowerTrips', 'quickerTrips']), seconds: z.number(), trips: z.int() }),
  z.strictObject({ code: z.literal('stopped'), matches: z.int(), of: z.int() }),
  z.strictObject({ code: z.literal('absent'), matches: z.int() }),
  z.strictObject({ code: z.enum(['standing', 'defended']), seconds: z.number(), matches: z.int() }),
  z.strictObject({ code: z.literal('misses'), goal: id, missed: z.number(), tried: z.number() }),
  z.strictObject({
    code: z.enum(['belowDecision', 'aboveDecision']),
    decision: id,
    expected: z.number(),
    seen: z.number(),
  }),
  z.strictObject({ code: z.enum(['fewerWins', 'moreWins']), expected: z.number(), came: z.number() }),
  z.strictObject({ code: z.literal('scoreOff'), points: z.number(), matches: z.int() }),
])

const report = z.strictObject({
  team,
  ranking: z
    .strictObject({ rank: z.int(), of: z.int(), played: z.int(), won: z.int(), tied: z.int(), lost: z.int() })
    .nullable(),
  matches: z.array(afterMatch).describe('Ours, in the order of play'),
  forecasts: z
    .strictObject({
      matches: z.int(),
      expected: z.number().describe('Wins, a tie half'),
      came: z.number(),
      range80: interval.describe('Where wins lie with 80 % if the chances hold'),
      difference: z
        .strictObject({ mean: z.number(), error: z.number().nullable() })
        .describe('Our score less forecast'),
      inside80: z.int(),
    })
    .nullable(),
  watched: z.int(),
  absent: z.int(),
  losses: z
    .array(z.strictObject({ kind: z.enum(losses), seconds: z.number(), matches: z.int() }))
    .describe('Seconds of teleop a match, most first'),
  misses: z.array(z.strictObject({ goal: id, tried: z.number(), missed: z.number() })),
  field: z
    .strictObject({
      trips: z.int(),
      model: z.number().describe('Seconds of a trip'),
      seen: z.number(),
      difference: z.number(),
      interval95: interval.nullable(),
      legs: z.array(z.strictObject({ leg: fieldLegRef, difference: z.number(), share: z.number(), trips: z.int() })),
    })
    .nullable(),
  points: estimate.nullable().describe('Expected points of a match by what was seen'),
  decisions: z.array(
    z.strictObject({
      id,
      name: z.string(),
      decidedOn: z.string(),
      chosen: z.string(),
      ofDesign: z.boolean(),
      expected: z.strictObject({ mean: z.number(), p10: z.number(), p90: z.number() }),
      checks: z.array(z.strictObject({ quantity: z.string(), expected: z.string(), when: z.string() })),
      checkAtEvent: z.string(),
      wouldChange: z.array(z.string()),
    }),
  ),
  changes: z.array(z.strictObject({ afterMatch: id.nullable(), note: z.string().nullable() })),
  questions: z.array(question).describe('What the evidence asks, what went against us first'),
})

export const afterAnswer = z
  .strictObject({
    design: named.extend({ revision: z.int() }).nullable(),
    designs: z.array(named),
    copies: z.array(named.extend({ shifts: z.int() })).describe('Designs with times of this event’s field'),
    report,
  })
  .meta({
    id: 'AfterEvent',
    description: 'What was predicted of a team at an event, what was seen, and what that asks',
  })

export const publishedAnswer = z
  .strictObject({
    format: z.literal(1),
    published: z.literal('event'),
    event: z.strictObject({ id, name: z.string(), startsOn: z.string().nullable(), teams: z.array(team) }),
    game: z.strictObject({ id, name: z.string(), revision: z.int(), goals: z.array(named) }),
    matches: z.array(
      z.strictObject({
        id,
        phase,
        number: z.int(),
        play: z.int(),
        red: z.array(team),
        blue: z.array(team),
      }),
    ),
    results: z.array(z.strictObject({ match: id, red: z.number(), blue: z.number() })).describe('Official totals'),
    ranking: z.array(
      z.strictObject({ rank: z.int(), team, played: z.int(), won: z.int(), tied: z.int(), lost: z.int() }),
    ),
    counted: z
      .array(
        z.strictObject({
          match: id,
          team,
          records: z.int(),
          goals: z.array(z.strictObject({ goal: id, autonomous: z.number(), teleop: z.number() })),
        }),
      )
      .describe('Pieces that scouts counted, means where several watched'),
    own: z
      .strictObject({
        team,
        trips: z
          .strictObject({ seen: z.int(), model: z.number(), field: z.number() })
          .nullable()
          .describe('Seconds of our trips by the design and on the field'),
        forecasts: z
          .strictObject({ matches: z.int(), expectedWins: z.number(), wins: z.number(), inside80: z.int() })
          .nullable(),
      })
      .nullable()
      .describe('What we say of ourselves'),
  })
  .meta({
    id: 'PublishedEvent',
    description: 'An event as it can be given to other teams: no ratings, no names of people',
  })
