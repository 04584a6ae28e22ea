import * as z from 'zod'
import type { Duration } from '../../model/documents/types.ts'
import { type ApiSaid, say } from '../sentences.ts'
import { above, list, longest, measure } from './primitives.ts'

const seconds = (description: string) => measure(0, longest, `${description} (s; a pace: factor)`)

function broken(context: z.core.$RefinementCtx, field: string, said: ApiSaid): void {
  context.addIssue({ code: 'custom', path: [field], message: say(said).message, params: { said } })
}

const fixed = z.strictObject({ kind: z.literal('fixed'), seconds: seconds('Always this long') })

const range = z
  .strictObject({
    kind: z.literal('range'),
    low: seconds('Shortest'),
    likely: seconds('Most likely'),
    high: seconds('Longest'),
  })
  .superRefine(({ low, likely, high }, context) => {
    if (low > likely) {
      broken(context, 'likely', { code: 'likelyBelowLow', parts: { low, likely } })
    } else if (likely > high) {
      broken(context, 'high', { code: 'highBelowLikely', parts: { likely, high } })
    }
  })

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
    broken(context, 'spread', { code: 'spreadTooLarge', parts: { median, spread, most: longest } })
  })

const samples = z.strictObject({
  kind: z.literal('samples'),
  seconds: list(seconds('Measured time'), 3, 10_000, 'Measured times, at least 3'),
})

export const duration = z
  .discriminatedUnion('kind', [fixed, range, lognormal, samples])
  .meta({ id: 'Duration', description: 'How long something takes, and how that varies from trip to trip' })
duration satisfies z.ZodType<Duration>
