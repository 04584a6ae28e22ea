import { describe, expect, test } from 'vitest'
import { findDraft, keepDraft, type Shelf, tabName } from '../../web/data/drafts.ts'

/** A shelf in memory, with the browser's own interface. */
function shelf(full = false): Shelf {
  const kept = new Map<string, string>()
  return {
    get length() {
      return kept.size
    },
    key: (index) => [...kept.keys()][index] ?? null,
    getItem: (key) => kept.get(key) ?? null,
    setItem: (key, value) => {
      if (full) throw new Error('The storage is full')
      kept.set(key, value)
    },
    removeItem: (key) => kept.delete(key),
  }
}

const at = (minute: number) => `2027-01-16T15:${String(minute).padStart(2, '0')}:00.000Z`
const edit = (value: string, minute: number) => ({ base: 1, value, at: at(minute) })
const of = (tab: string) => ({ kind: 'design' as const, id: 'tern', tab, from: null })
const find = (on: Shelf, tab: string) => findDraft<string>(on, 'design', 'tern', tab)

describe('edits of two tabs on one document', () => {
  test('stand beside each other: each tab finds its own, also when the other saves', () => {
    const on = shelf()
    keepDraft(on, of('a'), edit('A', 1))
    keepDraft(on, of('b'), edit('B', 2))
    expect(find(on, 'a')?.kept.value).toBe('A')
    expect(find(on, 'b')?.kept.value).toBe('B')
    keepDraft(on, of('a'), null)
    expect(find(on, 'b')?.kept.value).toBe('B')
  })

  test('are found by a new tab, the newest first, and go when it has saved them', () => {
    const on = shelf()
    keepDraft(on, of('a'), edit('A', 5))
    keepDraft(on, of('b'), edit('B', 2))
    const found = find(on, 'c')
    expect(found?.kept.value).toBe('A')
    keepDraft(on, { ...of('c'), from: found }, edit('A and more', 6))
    keepDraft(on, { ...of('c'), from: found }, null)
    expect(find(on, 'c')?.kept.value).toBe('B')
  })

  test('stay where the other tab has gone on meanwhile', () => {
    const on = shelf()
    keepDraft(on, of('a'), edit('A', 5))
    const found = find(on, 'c')
    keepDraft(on, of('a'), edit('A, later', 7))
    keepDraft(on, { ...of('c'), from: found }, null)
    expect(find(on, 'a')?.kept.value).toBe('A, later')
  })

  test('are not those of another document whose id begins alike, and one kept before tabs had names is found', () => {
    const on = shelf()
    keepDraft(on, { ...of('a'), id: 'tern-2' }, edit('other', 1))
    expect(find(on, 'a')).toBeNull()
    on.setItem('cyclewright/draft/design/tern', JSON.stringify(edit('older', 1)))
    expect(find(on, 'a')?.kept.value).toBe('older')
  })

  test('are no worse than lost where the storage is full or holds something else', () => {
    const full = shelf(true)
    expect(() => keepDraft(full, of('a'), edit('A', 1))).not.toThrow()
    const on = shelf()
    on.setItem('cyclewright/draft/design/tern#a', '{broken')
    expect(find(on, 'a')).toBeNull()
  })
})

test('a tab keeps its name over reloads, and two have two', () => {
  let count = 0
  const fresh = () => `tab-${++count}`
  const one = shelf()
  expect([tabName(one, fresh), tabName(one, fresh), tabName(shelf(), fresh)]).toEqual(['tab-1', 'tab-1', 'tab-2'])
})
