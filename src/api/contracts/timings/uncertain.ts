import * as z from 'zod'
import type { Spread, Uncertain } from '../../../model/timing/types.ts'
import { disagree, rising } from '../agree.ts'
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
    .superRefine(rising)
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
      disagree(context, ['spread'], { code: 'spreadOutside', parts: { median, spread, low, high } })
    })
  const spread = z.discriminatedUnion('kind', [range, lognormal])
  spread satisfies z.ZodType<Spread>
  const either = z.union([measure(low, high, 'Known exactly'), spread]).describe(description)
  either satisfies z.ZodType<Uncertain>
  return either
}
