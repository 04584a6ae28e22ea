import type * as z from 'zod'
import type { Path } from '../../model/errors.ts'
import { type ApiSaid, say } from '../sentences.ts'

/** Adds what several fields say against each other, with the sentence's name and parts. */
export function disagree(context: z.core.$RefinementCtx, path: Path, said: ApiSaid): void {
  context.addIssue({ code: 'custom', path: [...path], message: say(said).message, params: { said } })
}

interface Three {
  low: number
  likely: number
  high: number
}

/** Low, likely and high in this order; a sentence names the one that is out of it. */
export function rising({ low, likely, high }: Three, context: z.core.$RefinementCtx): void {
  if (low > likely) disagree(context, ['likely'], { code: 'likelyBelowLow', parts: { low, likely } })
  else if (likely > high) disagree(context, ['high'], { code: 'highBelowLikely', parts: { likely, high } })
}

/** Low below high, as the ends of something are. */
export function apart({ low, high }: Omit<Three, 'likely'>, context: z.core.$RefinementCtx): void {
  if (low >= high) disagree(context, ['high'], { code: 'highNotAbove', parts: { low, high } })
}
