import type { BeliefReport, Input } from '../../../src/model/compare/types.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { words } from '../../words/catalogue.ts'
import { points } from '../../words/format.ts'
import { inputWords } from '../../words/inputs.ts'

/** What a worth of measuring below this is not worth saying (points a match). */
const least = 0.05

/**
 * What to measure next, in words: 'Time ‘Latch time’ 12 more times before deciding: worth 1.9 points per match.' First the
 * unknown whose measuring brings most, with the fewest measurements that bring four fifths of what the most would; then
 * the next one, if there is one.
 */
export function nextWords(
  belief: BeliefReport,
  inputs: readonly Input[],
  documents: { game: Game; options: readonly Option[] },
): string[] {
  const text = words().tradeoffs.belief
  if (!inputs.some(({ id }) => (belief.evsi[id]?.length ?? 0) > 0)) return [text.noSpread]
  const found = inputs
    .flatMap((input) => {
      const values = belief.evsi[input.id] ?? []
      const most = Math.max(0, ...values.map(([, value]) => value))
      const enough = values.find(([, value]) => value >= 0.8 * most)
      return enough && most >= least ? [{ input, count: enough[0], value: enough[1], most }] : []
    })
    .sort((a, b) => b.most - a.most)
  if (found.length === 0) return [text.nothing]
  return found.slice(0, 2).map(({ input, count, value }, index) => {
    const { name, measure } = inputWords(input, documents)
    const say = measure === 'probability' ? text.try : timed(input) ? text.time : text.measure
    const sentence = say(name, count, points(value))
    return index === 0 ? sentence : text.after(sentence)
  })
}

/** What a stopwatch measures: durations of stages and whole trips. */
const timed = ({ paths }: Input): boolean =>
  paths.length > 0 && paths.every((path) => /\/(duration|whole|retry)(\/|$)/.test(path) || /\/stages\/\d+$/.test(path))
