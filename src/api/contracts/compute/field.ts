import * as z from 'zod'
import { type FieldReport, leftOutReasons } from '../../../model/scouting/field/index.ts'
import { game } from '../game.ts'
import { count, id, list } from '../primitives.ts'
import { robot } from '../robot.ts'
import { observation, scheduledMatch } from '../scouting/index.ts'

export const fieldLegRef = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('collect'), source: id }),
  z.strictObject({ kind: z.literal('score'), goal: id, entry: count(0, 100, 'Which way to score there, from 0') }),
])

export const onlyRuns = z.enum(['match', 'practice']).describe('Which runs count; all where nothing is said')

export const fieldRequest = z.strictObject({
  game,
  robot: robot.describe('The design that the records are put against'),
  matches: list(scheduledMatch, 0, 500, 'The schedule'),
  observations: list(observation, 0, 2000, 'Records in force of one robot, in the order of arrival'),
  only: onlyRuns.optional(),
  drivers: list(
    z.strictObject({ match: id, driver: id.describe('Who drove') }),
    0,
    500,
    'Who drove in matches; goes before what a record says',
  ).optional(),
})

const interval = z.tuple([z.number(), z.number()])

const known = z.strictObject({
  mean: z.number(),
  interval95: interval.nullable().describe('By the differences between runs; null where everything is of one run'),
})

const compared = {
  trips: z.int().describe('Trips that were seen to their end'),
  runs: z.int(),
  model: z.strictObject({ mean: z.number(), sd: z.number() }).describe('Of the same legs, in seconds'),
  field: known.extend({ sd: z.number() }),
  difference: known.describe('Field less model, in seconds'),
}

const learning = z
  .strictObject({
    doubling: z.number().describe('Trip time after twice as many runs, as a factor'),
    interval95: interval,
    first: z.number().describe('Field time to model time by the curve, at the first run'),
  })
  .describe('Power law of practice over the runs of a driver')

export const fieldReport = z
  .strictObject({
    runs: z
      .array(
        z.strictObject({
          id: z.string().describe('Of the match; of practice the record’s'),
          kind: z.enum(['match', 'practice']),
          driver: z.string().nullable().describe('Null: nobody noted who drove'),
          number: z.int().describe('Which run of its driver, from 1'),
          trips: z.int(),
          cutOff: z.int(),
          field: z.number().nullable().describe('Mean seconds of a trip'),
          model: z.number().nullable(),
        }),
      )
      .describe('In the order in which they were driven'),
    trips: z.int().describe('Trips put against the model that were seen to their end'),
    cutOff: z.int().describe('Trips that were not over when they were last seen'),
    leftOut: z.array(z.strictObject({ reason: z.enum(leftOutReasons), trips: z.int() })),
    sourceUnknown: z
      .int()
      .describe('Trips of which nobody noted where the piece came from: the quickest source is taken'),
    defended: z.int().describe('Trips that ended while the robot was defended'),
    whole: z
      .strictObject({
        ...compared,
        distance: z.number().describe('Kolmogorov–Smirnov distance from the predicted distribution of the same legs'),
        p: z
          .number()
          .describe('How often the design itself, played again with the same ends, lies at least so far off'),
        beyond: z.number().describe('Share of trips that outlast the longest one seen to its end'),
      })
      .nullable()
      .describe('Null where no trip was seen to its end'),
    parts: z
      .strictObject({
        trips: z.int().describe('Trips whose collecting was timed'),
        difference: z.number(),
        collecting: z.number(),
        scoring: z.number(),
      })
      .nullable(),
    legs: z.array(
      z.strictObject({
        ...compared,
        leg: fieldLegRef,
        share: z.number().describe('Seconds of the difference of a trip that this leg brings'),
        stages: z
          .array(z.strictObject({ stage: id.nullable(), seconds: z.number().nullable() }))
          .describe('By how much each stage would have to last longer; null where no time does that'),
      }),
    ),
    drivers: z.array(
      z.strictObject({
        driver: z.string().nullable(),
        compared: z.strictObject(compared).nullable(),
        learning: learning.nullable().describe('Null with fewer than four runs'),
      }),
    ),
    distribution: z.array(z.tuple([z.number(), z.number()])).describe('By the model: [seconds, share] by half seconds'),
    seen: z.array(z.strictObject({ seconds: z.number(), ended: z.boolean(), run: z.int().describe('Place in runs') })),
  })
  .meta({ id: 'FieldReport', description: 'What a design says of its trips beside what was timed on the field' })
fieldReport satisfies z.ZodType<FieldReport>
