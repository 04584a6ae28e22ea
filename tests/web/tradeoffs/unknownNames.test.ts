import { describe, expect, test } from 'vitest'
import { breakwater } from '../../../seed/index.ts'
import { beliefUnder, idOf, nameless, withUnknownNamed, wordOf } from '../../../web/screens/tradeoffs/unknownNames.ts'

const { comparison } = breakwater
const index = comparison.inputs.findIndex(({ id }) => id === comparison.breakEven)
const [before, after] = [comparison.inputs[index]!.id, 'Hooking on']

describe('an unknown that is called otherwise', () => {
  const renamed = withUnknownNamed(comparison, index, after)

  test('is so wherever the comparison and its result name it, and not a number moves', () => {
    expect(JSON.stringify(comparison.result)).toContain(`"${before}"`)
    expect(JSON.stringify(renamed)).not.toContain(`"${before}"`)
    expect(JSON.stringify(renamed).replaceAll(`"${after}"`, `"${before}"`)).toBe(JSON.stringify(comparison))
    expect(renamed.breakEven).toBe(after)
    expect(renamed.result!.belief!.evppi[after]).toEqual(comparison.result!.belief!.evppi[before])
    expect(nameless(renamed.inputs)).toEqual(nameless(comparison.inputs))
  })
  test('leaves the others alone, also the one that is broken even on', () => {
    const other = withUnknownNamed(comparison, (index + 1) % comparison.inputs.length, after)
    expect(other.breakEven).toBe(before)
    expect(other.inputs.map(({ id }) => id).filter((id) => id !== after)).toHaveLength(comparison.inputs.length - 1)
  })
  test('finds the belief that was computed under its former name', () => {
    const { belief } = comparison.result!
    expect(beliefUnder(belief!, comparison.inputs, renamed.inputs)).toEqual(renamed.result!.belief)
    expect(beliefUnder(belief!, comparison.inputs, comparison.inputs)).toEqual(belief)
  })
  test('has a capital, and keeps what a day of practice is worth', () => {
    expect(wordOf('  hooking on ')).toBe('Hooking on')
    const days = { id: 'Less practice, 1 d = 1.5 %', paths: ['/x'], as: 'factor' as const, low: 1, likely: 1, high: 2 }
    expect(idOf(days, 'A week at the lake')).toBe('A week at the lake, 1 d = 1.5 %')
    expect(idOf(comparison.inputs[index]!, after)).toBe(after)
  })
})
