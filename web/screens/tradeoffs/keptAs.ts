import type { CompareReport } from '../../../src/model/compare/types.ts'

/** Less than this shows in no number of an answer: points to 0.1, shares to 1 %. */
const shown = 0.005

/** Whether two answers are alike to what is shown, in whatever order their parts are kept. What is undefined is not there. */
function alike(a: unknown, b: unknown): boolean {
  if (typeof a === 'number' && typeof b === 'number') return Math.abs(a - b) < shown
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b
  const [one, other] = [a, b] as { [key: string]: unknown }[]
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].every((key) => alike(one![key], other![key]))
}

/** Whether what is stored with a comparison is what is computed: the same, another answer, or nothing yet. */
export function keptAs(stored: CompareReport | null, computed: CompareReport): 'same' | 'other' | 'nothing' {
  if (stored === null) return 'nothing'
  return alike(stored, computed) ? 'same' : 'other'
}
