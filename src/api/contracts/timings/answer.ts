import * as z from 'zod'
import type { Belief, Remark, Sensitivity, SpreadOfTime } from '../../../model/timing/types.ts'
import { duration } from '../duration.ts'

export const seconds = z.number().describe('s')

/** A number of an answer; the description names the unit. */
export const number = (description: string) => z.number().describe(description)

/** An array to be drawn; the description names the unit. */
export const curve = (description: string) => z.array(z.number()).describe(description)

export const remark = z
  .strictObject({
    code: z.string().describe('For programs that translate'),
    message: z.string().describe('A sentence'),
    values: z.record(z.string(), z.number()).describe('The sentence’s numbers (SI)'),
  })
  .meta({ id: 'TimingRemark' })
remark satisfies z.ZodType<Remark>

const sensitivity = z
  .strictObject({
    input: z.string().describe('Dotted path in the request'),
    unit: z.string(),
    value: number('Likely value, in its unit'),
    secondsPerUnit: number('Seconds for one unit more, all others likely'),
    secondsPerPercent: number('Seconds for one hundredth of the value more'),
    swing: z
      .tuple([seconds.nullable(), seconds.nullable()])
      .optional()
      .describe('Seconds at percentiles 10 and 90 of an uncertain input; null: impossible there'),
  })
  .meta({ id: 'TimingSensitivity' })
sensitivity satisfies z.ZodType<Sensitivity>

const belief = z
  .strictObject({ low: seconds, likely: seconds, high: seconds, impossible: number('Share of draws, 0 to 1') })
  .meta({ id: 'TimingBelief', description: 'Percentiles 10, 50 and 90 of the time’s level where inputs are not known' })
belief satisfies z.ZodType<Belief>

const spread = z
  .strictObject({
    mean: seconds,
    sd: seconds,
    p10: seconds,
    p90: seconds,
    draws: number('Latin hypercube draws'),
    impossible: number('Share of draws in which it can not be done, left out of the rest'),
  })
  .meta({ id: 'TimingSpread', description: 'Over inputs that vary from trip to trip' })
spread satisfies z.ZodType<SpreadOfTime>

interface Form<Quantities extends z.ZodRawShape, Curves extends z.ZodRawShape> {
  id: string
  quantities: Quantities
  curves: Curves
}

/** Both forms of an answer: what the mechanism does, or why it can not. */
export function answerOf<Q extends z.ZodRawShape, C extends z.ZodRawShape>(form: Form<Q, C>) {
  return eitherAnswer(form, { seconds: seconds.describe('At the likely values (s)'), duration })
}

/** The same where there may be no time to tell. */
export function answerOrNull<Q extends z.ZodRawShape, C extends z.ZodRawShape>(form: Form<Q, C>, meaning: string) {
  return eitherAnswer(form, { seconds: seconds.nullable().describe(meaning), duration: duration.nullable() })
}

function eitherAnswer<
  Q extends z.ZodRawShape,
  C extends z.ZodRawShape,
  T extends { seconds: z.ZodType; duration: z.ZodType },
>({ id, quantities, curves }: Form<Q, C>, time: T) {
  const warnings = z.array(remark)
  return z
    .discriminatedUnion('possible', [
      z.strictObject({
        possible: z.literal(true),
        seconds: time.seconds as T['seconds'],
        duration: time.duration as T['duration'],
        belief: belief.nullable().describe('Null where no input’s level is uncertain'),
        spread: spread.nullable().describe('Null where no input varies from trip to trip'),
        sensitivity: z.array(sensitivity),
        quantities: z.strictObject(quantities),
        curves: z.strictObject(curves).describe('Arrays of equal length'),
        warnings,
      }),
      z.strictObject({
        possible: z.literal(false),
        why: remark,
        quantities: z.strictObject(quantities).partial().describe('As far as they can be told'),
        warnings,
      }),
    ])
    .meta({ id })
}
