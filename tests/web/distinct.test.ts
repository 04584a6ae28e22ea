import { expect, test } from 'vitest'
import { distinct } from '../../web/screens/documents/distinct.ts'

const entry = (revision: number, note: string | null = null) => ({ revision, note, name: 'Breakwater', savedAt: '' })

test('of revisions that say the same, a choice has the latest, and what a reading names', () => {
  // 2 and 4 were made as readings, each with the printed rules after it; 6 is an edit, 7 takes it back.
  const all = [
    entry(7, 'Revision 5 restored'),
    entry(6),
    entry(5, 'Revision 3 restored'),
    entry(4, 'If it floats'),
    entry(3, 'Revision 1 restored'),
    entry(2, 'If it sinks'),
    entry(1),
  ]
  const chosen = (named: number[]) => distinct(all, new Set(named)).map(({ revision }) => revision)
  expect(chosen([])).toEqual([7, 6, 4, 2])
  expect(chosen([2, 3])).toEqual([7, 6, 4, 3, 2])
  // A note that somebody wrote, of a revision that comes later or never was, hides nothing.
  expect(distinct([entry(2), entry(1, 'Revision 2 restored')], new Set())).toHaveLength(2)
  expect(distinct([entry(1, 'Revision 9 restored')], new Set())).toHaveLength(1)
})
