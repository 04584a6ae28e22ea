import { describe, expect, test } from 'vitest'
import { breakwater } from '../../../seed/index.ts'
import type { CompareReport } from '../../../src/model/compare/types.ts'
import { keptAs } from '../../../web/screens/tradeoffs/keptAs.ts'

const computed = breakwater.decision.snapshot.result

/** The same with the keys of every part in another order, as a server that reads by a schema gives it back. */
const reordered = (value: unknown): unknown =>
  Array.isArray(value)
    ? value.map(reordered)
    : typeof value === 'object' && value !== null
      ? Object.fromEntries(
          Object.entries(value)
            .reverse()
            .map(([key, part]) => [key, reordered(part)]),
        )
      : value

describe('what is stored with a comparison', () => {
  test('is the same in whatever order it came back', () => {
    expect(JSON.stringify(reordered(computed))).not.toBe(JSON.stringify(computed))
    expect(keptAs(reordered(computed) as CompareReport, computed)).toBe('same')
  })
  test('is the same where a part is undefined that is not there', () => {
    const { belief: _, ...without } = computed
    expect(keptAs(without, { ...without, belief: undefined } as unknown as CompareReport)).toBe('same')
  })
  test('is another answer where a number moved by what is shown, or a part was not computed', () => {
    const [first, ...others] = computed.options
    const moved = (by: number) => ({ ...computed, options: [{ ...first!, mean: first!.mean + by }, ...others] })
    expect(keptAs(computed, moved(0.001))).toBe('same')
    expect(keptAs(computed, moved(0.1))).toBe('other')
    const { belief: _, ...without } = computed
    expect(keptAs(without, computed)).toBe('other')
  })
  test('is nothing before it was kept', () => {
    expect(keptAs(null, computed)).toBe('nothing')
  })
})
