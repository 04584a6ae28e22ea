import * as z from 'zod'
import type { BeliefReport, CompareReport, Input } from '../../../model/compare/types.ts'
import type { Objective, StatedReport } from '../../../model/match/stated/types.ts'
import { rising } from '../agree.ts'
import { game } from '../game.ts'
import { option } from '../option.ts'
import { count, id, list, measure } from '../primitives.ts'

const level = measure(-1e9, 1e9, 'In the input’s own unit')

export const input = z
  .strictObject({
    id,
    paths: list(z.string().max(500), 1, 100, 'JSON Pointers (RFC 6901) into { game, options }'),
    as: z.enum(['value', 'factor', 'add']).describe('Replaces the number, or multiplies or is added to every draw'),
    low: level,
    likely: level,
    high: level,
    perMeasurement: measure(0, 1e9, 'Standard deviation of one measurement, in the input’s own unit').optional(),
  })
  .superRefine(rising)
  .meta({ id: 'Input', description: 'One unknown number of a comparison: belief about a level' })
input satisfies z.ZodType<Input>

export const inputs = list(input, 0, 30, 'Unknown numbers')

export const seed = count(0, 4_294_967_295, 'Seed of the draws')

export const objective = z
  .enum(['points', 'win', 'rankingPoints'])
  .describe('What options are judged by; wins and ranking points need a field')
objective satisfies z.ZodType<Objective>

export const compareRequest = z.strictObject({
  game,
  options: list(option, 1, 12, 'Options to compare'),
  inputs: inputs.optional(),
  breakEven: id.optional().describe('Id of the input whose break-even is asked for'),
  belief: z.strictObject({ seed }).optional(),
  objective: objective.optional(),
  field: z
    .strictObject({ partners: list(option, 2, 2, 'Two partners'), opponents: list(option, 3, 3, 'Three opponents') })
    .optional(),
  level: id.optional().describe('The event’s level'),
  replicates: count(1, 1_000_000, 'Simulated matches').optional(),
  seed: seed.optional(),
})

const value = z.strictObject({ value: z.number(), standardError: z.number() })
const text = z.string()
const points = z.number().describe('Points')

const belief = z.strictObject({
  best: z.record(text, z.number()).describe('Chance that each option is best'),
  regret: z.record(text, points).describe('Expected regret (points)'),
  evpi: value,
  evppi: z.record(text, value),
  evsi: z.record(text, z.array(z.tuple([z.number(), z.number()]))).describe('[measurements, points] per input'),
  gridError: z.number().describe('Rms by which a difference is still off the plans on 0.1 s (points)'),
  form: z.record(text, points).describe('What form adds to each option’s points at the likely values'),
})
belief satisfies z.ZodType<BeliefReport>

const crossing = z.strictObject({ value: z.number(), from: text, to: text, jump: z.boolean() })

const swing = z.strictObject({
  input: text,
  low: z.number(),
  high: z.number(),
  difference: z.tuple([points, points]).describe('Best option less the runner-up at low and at high'),
})

const mean = z.strictObject({ mean: z.number(), standardError: z.number().describe('Of the simulation alone') })
const chance = z.strictObject({ probability: z.number(), standardError: z.number() })

const stated = z.strictObject({
  replicates: z.number().describe('Matches of each option'),
  seed: z.number(),
  options: z.array(
    z.strictObject({
      id: text,
      won: chance.describe('Share of matches won; a tie is no win'),
      win: mean.describe('The same with a tie as half of a win'),
      rankingPoints: mean,
      score: mean.describe('Our alliance’s points'),
      bonuses: z.record(text, chance).describe('How often our alliance earns each'),
    }),
  ),
  differences: z
    .record(text, z.record(text, z.strictObject({ win: mean, rankingPoints: mean, score: mean })))
    .describe('One option less another, match by match on the same luck'),
})
stated satisfies z.ZodType<StatedReport>

export const compareAnswer = z
  .strictObject({
    options: z.array(
      z.strictObject({
        id: text,
        mean: points,
        sd: points,
        p10: points,
        p50: points,
        p90: points,
        win: z.strictObject({ probability: z.number(), standardError: z.number() }).optional(),
        rankingPoints: z.strictObject({ mean: z.number(), standardError: z.number() }).optional(),
      }),
    ),
    beats: z.record(text, z.record(text, z.number())).describe('Chance to score more; ties count half'),
    breakEven: z.strictObject({ input: text, crossings: z.array(crossing) }).optional(),
    swing: z.array(swing).optional(),
    belief: belief.optional(),
    field: stated.optional().describe('Where a field was stated'),
  })
  .meta({ id: 'CompareAnswer' })
compareAnswer satisfies z.ZodType<CompareReport>
