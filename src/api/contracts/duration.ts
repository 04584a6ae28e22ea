import * as z from 'zod'
import type { Duration } from '../../model/documents/types.ts'
import { disagree, rising } from './agree.ts'
import { above, list, longest, measure } from './primitives.ts'

const seconds = (description: string) => measure(0, longest, `${description} (s; a pace: factor)`)

const fixed = z.strictObject({ kind: z.literal('fixed'), seconds: seconds('Always this long') })

const range = z
  .strictObject({
    kind: z.literal('range'),
    low: seconds('Shortest'),
    likely: seconds('Most likely'),
    high: seconds('Longest'),
  })
  .superRefine(rising)

/** Standard normal quantile of 0.999. */
const oneInAThousand = 3.0902

const lognormal = z
  .strictObject({
    kind: z.literal('lognormal'),
    median: above(0, longest, 'Median (s; a pace: factor)'),
    spread: measure(1, 4, 'Geometric standard deviation, at least 1'),
  })
  .superRefine(({ median, spread }, context) => {
    if (median * spread ** oneInAThousand <= longest) return
    disagree(context, ['spread'], { code: 'spreadTooLarge', parts: { median, spread, most: longest } })
  })

const samples = z.strictObject({
  kind: z.literal('samples'),
  seconds: list(seconds('Measured time'), 3, 10_000, 'Measured times, at least 3'),
})

export const duration = z
  .discriminatedUnion('kind', [fixed, range, lognormal, samples])
  .meta({ id: 'Duration', description: 'How long something takes, and how that varies from trip to trip' })
duration satisfies z.ZodType<Duration>
