import { expect, test } from 'vitest'
import { breakwater, optionOf } from '../../../seed/index.ts'
import type { CompareReport } from '../../../src/model/compare/types.ts'
import type { StatedReport } from '../../../src/model/match/stated/types.ts'
import {
  againstPoints,
  differenceSaid,
  headlineBy,
  standingBy,
  valueSaid,
} from '../../../web/screens/tradeoffs/objective/standing.ts'

const { game } = breakwater
const options = ['shearwater-best', 'kittiwake-best'].map(optionOf)
const [hook, practice] = options.map(({ id }) => id) as [string, string]

/** Two options of which the first leads by so many ranking points, known to so much, and by so many points. */
function report(of: { lead: number; error: number; points: number }): CompareReport & { field: StatedReport } {
  const mean = (value: number, standardError = of.error) => ({ mean: value, standardError })
  const option = (id: string, sign: 1 | -1) => ({
    id,
    won: { probability: 0.5 - sign * 0.03, standardError: 0.005 },
    win: mean(0.5 - sign * 0.03, 0.005),
    rankingPoints: mean(2 + (sign * of.lead) / 2),
    score: mean(160),
    bonuses: { berthed: { probability: sign > 0 ? 0.37 : 0.02, standardError: 0.005 } },
  })
  const less = (sign: 1 | -1) => ({
    win: mean(-sign * 0.06, 0.004),
    rankingPoints: mean(sign * of.lead),
    score: mean(0),
  })
  return {
    options: [hook, practice].map((id, index) => ({
      id,
      mean: 50 + (index === 0 ? of.points : 0),
      sd: 9,
      p10: 40,
      p50: 50,
      p90: 60,
    })),
    beats: {},
    field: {
      replicates: 5000,
      seed: 1,
      options: [option(hook, 1), option(practice, -1)],
      differences: { [hook]: { [practice]: less(1) }, [practice]: { [hook]: less(-1) } },
    },
  }
}
const found = (of: Parameters<typeof report>[0]) => againstPoints(report(of), 'rankingPoints', { game, options })

test('where points and ranking points disagree, both are named, with the bonus that does it and the wins that it costs', () => {
  const { disagree, sentences } = found({ lead: 0.15, error: 0.02, points: -0.6 })
  expect(disagree).toBe(true)
  expect(sentences).toEqual([
    'Points and ranking points disagree: by points ‘Kittiwake, finish when it pays’ is ahead (+0.6 a match), by ranking points ‘Shearwater, finish when it pays’ (+0.15 ± 0.02).',
    'It earns ‘All berthed’ in 37\u00a0% of its matches, the other in 2\u00a0%: more than its points show.',
    'That outweighs the matches that it wins less often (−6.0\u00a0% ± 0.4\u00a0%).',
  ])
  expect(standingBy(report({ lead: 0.15, error: 0.02, points: 0 }).field, 'win')?.best).toBe(practice)
})

test('a lead within two errors is no lead, level points disagree with nobody, and the same order is said to be the same', () => {
  const unsure = { lead: 0.15, error: 0.08, points: -0.6 }
  expect(found(unsure).disagree).toBe(false)
  expect(headlineBy(report(unsure).field, 'rankingPoints', options)).toContain('do not tell')
  expect(found({ lead: 0.15, error: 0.02, points: -0.02 }).sentences[0]).toContain('are level')
  expect(found({ lead: 0.15, error: 0.02, points: 1.2 })).toEqual({
    disagree: false,
    sentences: ['By points ‘Shearwater, finish when it pays’ is ahead, too: +1.2 a match.'],
  })
})

test('a number and its error end at the same digit, the error rounded up, as on the match screen', () => {
  const of = (mean: number, standardError: number) => ({ mean, standardError })
  // To tenths, '49 % ± 0.4 %' would claim to know the half per cent that 49 may hide.
  expect(valueSaid('win', of(0.493, 0.0036))).toBe('49\u00a0% ± 1\u00a0%')
  expect(valueSaid('rankingPoints', of(2.2, 0.0912))).toBe('2.20 ± 0.10')
  expect(differenceSaid('win', of(-0.05, 0.0021))).toBe('\u22125.0\u00a0% ± 0.3\u00a0%')
  expect(differenceSaid('rankingPoints', of(0.152, 0.0004))).toBe('+0.15 ± 0.01')
  // Two options that play alike differ by nothing, which no luck could change.
  expect(differenceSaid('rankingPoints', of(0, 0))).toBe('0.00')
})
