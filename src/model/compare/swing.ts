import { bestOf, likelyValues, type Question } from './evaluator.ts'
import type { CompareReport } from './types.ts'

/**
 * Swing of each input: one at a time from low to high, the others likely, by the change of (best − runner-up), where
 * best and runner-up are those at the likely values. Points; the widest first, equals in the inputs' order.
 * Fewer than two options have no difference: an empty list.
 */
export function swingOf({ options, inputs, evaluate }: Question): NonNullable<CompareReport['swing']> {
  if (options.length < 2) return []
  const likely = likelyValues(inputs)
  const base = evaluate(likely)
  const best = bestOf(base)
  const runnerUp = bestOf(base.map((value, option) => (option === best ? Number.NEGATIVE_INFINITY : value)))
  const differenceWith = (index: number, value: number): number => {
    const points = evaluate(likely.with(index, value))
    return (points[best] as number) - (points[runnerUp] as number)
  }
  return inputs
    .map((input, index): NonNullable<CompareReport['swing']>[number] => ({
      input: input.id,
      low: input.low,
      high: input.high,
      difference: [differenceWith(index, input.low), differenceWith(index, input.high)],
    }))
    .sort((a, b) => width(b.difference) - width(a.difference))
}

const width = ([atLow, atHigh]: readonly [number, number]): number => Math.abs(atHigh - atLow)
