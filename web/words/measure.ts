import type { BeliefReport, Input } from '../../src/model/compare/types.ts'
import type { Game, Option } from '../../src/model/documents/types.ts'
import { words } from './catalogue.ts'
import { plain, points } from './format.ts'
import { inputWords } from './inputs.ts'

/**
 * What to measure next: the unknown whose measuring brings most, with the fewest measurements that bring 80 % of what
 * the most would: 'Measure ‘Hang success’ 12 times before deciding: worth 0.9 points a match.'
 */
export function measureWords(
  belief: BeliefReport,
  inputs: readonly Input[],
  documents: { game: Game; options: readonly Option[] },
): string {
  const texts = words().verdict.measure
  const candidates = inputs.flatMap((input) => {
    const values = belief.evsi[input.id] ?? []
    const most = Math.max(0, ...values.map(([, value]) => value))
    const enough = values.find(([, value]) => value >= 0.8 * most)
    return enough && most >= 0.05 ? [{ input, count: enough[0], value: enough[1], most }] : []
  })
  const best = candidates.sort((a, b) => b.most - a.most)[0]
  if (!best) return texts.none(plain(0.1))
  const { name } = inputWords(best.input, documents)
  return texts.best(name, best.count, points(best.value))
}
