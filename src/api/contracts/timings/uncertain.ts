import * as z from 'zod'
import type { Spread, Uncertain } from '../../../model/timing/types.ts'
import { above, measure } from '../primitives.ts'

/** Standard normal quantile of 0.999. */
const oneInAThousand = 3.0902

const of = z
  .enum(['trips', 'level'])
  .optional()
  .describe('What varies: from trip to trip (goes into the duration), or our knowledge (goes into the belief); trips')

/** A number within bounds, known exactly or with its spread; the description names the unit. */
export function uncertain(low: number, high: number, description: string) {
  const within = (what: string) => measure(low, high, what)
  const range = z
    .strictObject({
      kind: z.literal('range'),
      low: within('Least'),
      likely: within('Most likely'),
      high: within('Greatest'),
      of,
    })
    .superRefine((range, context) => {
      const refuse = (path: string, message: string) => context.addIssue({ code: 'custom', path: [path], message })
      if (range.low > range.likely) {
        refuse('likely', `likely must be at least low (${range.low}), got ${range.likely}`)
      } else if (range.likely > range.high) {
        refuse('high', `high must be at least likely (${range.likely}), got ${range.high}`)
      }
    })
  const lognormal = z
    .strictObject({
      kind: z.literal('lognormal'),
      median: above(0, Math.max(high, Number.MIN_VALUE), 'Median'),
      spread: measure(1, 4, 'Geometric standard deviation, at least 1'),
      of,
    })
    .superRefine(({ median, spread }, context) => {
      const far = spread ** oneInAThousand
      if (median / far >= low && median * far <= high) return
      const message = `spread must be less for a median of ${median}, got ${spread}: one in a thousand would lie outside of ${low} to ${high}`
      context.addIssue({ code: 'custom', path: ['spread'], message })
    })
  const spread = z.discriminatedUnion('kind', [range, lognormal])
  spread satisfies z.ZodType<Spread>
  const either = z.union([measure(low, high, 'Known exactly'), spread]).describe(description)
  either satisfies z.ZodType<Uncertain>
  return either
}
