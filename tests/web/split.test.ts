import { describe, expect, test } from 'vitest'
import type { Duration, Stage } from '../../src/model/documents/types.ts'
import { mean } from '../../src/model/duration/index.ts'
import { cutStage, splitWhole } from '../../web/screens/designs/split.ts'

const trips: Duration[] = [
  { kind: 'fixed', seconds: 9.4 },
  { kind: 'range', low: 5, likely: 8, high: 14 },
  { kind: 'lognormal', median: 8, spread: 1.3 },
  { kind: 'samples', seconds: [7, 8, 12] },
]

describe.each(trips)('a whole trip said as $kind', (whole) => {
  test('is split into the drive and a stage that still add up to it', () => {
    const stages = splitWhole({ whole }, 3.2, 'Rest')!
    expect(stages).toHaveLength(1)
    expect(stages[0]?.after).toEqual(['drive'])
    // Times are kept to 0.01 s.
    expect(3.2 + mean(stages[0]!.duration)).toBeCloseTo(mean(whole), 1)
    expect(stages[0]?.duration.kind).toBe(whole.kind)
  })

  test('is not split where the drive alone takes longer', () => {
    expect(splitWhole({ whole }, 20, 'Rest')).toBeNull()
  })

  test('and its stage is cut in two that take as long together', () => {
    const stages: Stage[] = [
      { id: 'rest', name: 'Rest', duration: whole, after: ['drive'] },
      { id: 'next', name: 'Next', duration: { kind: 'fixed', seconds: 1 }, after: ['rest'] },
    ]
    const cut = cutStage(stages, 'rest', { id: 'rest-2', name: 'More' })
    expect(cut.map(({ id, after }) => [id, after])).toEqual([
      ['rest', ['drive']],
      ['rest-2', ['rest']],
      ['next', ['rest-2']],
    ])
    expect(mean(cut[0]!.duration) + mean(cut[1]!.duration)).toBeCloseTo(mean(whole), 1)
  })
})
