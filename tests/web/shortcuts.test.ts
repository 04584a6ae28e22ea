import { describe, expect, test } from 'vitest'
import { pressed, shortcutIds, shortcuts } from '../../web/shell/shortcuts.ts'
import { sources } from '../house/sources.ts'

const none = { ctrlKey: false, metaKey: false, shiftKey: false, altKey: false }

describe('a shortcut is pressed', () => {
  test.each([
    ['undo', { ...none, key: 'z', ctrlKey: true }],
    ['undo', { ...none, key: 'z', metaKey: true }],
    ['redo', { ...none, key: 'Z', ctrlKey: true, shiftKey: true }],
    ['redo', { ...none, key: 'y', ctrlKey: true }],
    ['save', { ...none, key: 's', ctrlKey: true }],
    // A German keyboard types ? with Shift and ß, a French one with Shift and a comma: the sign counts.
    ['shortcuts', { ...none, key: '?', shiftKey: true }],
    ['shortcuts', { ...none, key: '?' }],
    ['numberFarUp', { ...none, key: 'ArrowUp', shiftKey: true }],
  ] as const)('%s by %j', (id, event) => expect(pressed(event, ...shortcutIds)).toBe(id))

  test.each([
    { ...none, key: 'z' },
    { ...none, key: 'z', ctrlKey: true, altKey: true },
    { ...none, key: 's' },
    { ...none, key: 'a', ctrlKey: true },
  ])('by none of %j', (event) => expect(pressed(event, ...shortcutIds)).toBeNull())

  test('is only what was asked for: undo with Shift is redo, and one step is not five', () => {
    expect(pressed({ ...none, key: 'z', ctrlKey: true, shiftKey: true }, 'undo')).toBeNull()
    expect(pressed({ ...none, key: 'ArrowUp', shiftKey: true }, 'numberUp')).toBeNull()
  })
})

test('no two shortcuts of one place, or of everywhere, have the same keys', () => {
  const places = [...new Set(shortcutIds.map((id) => shortcuts[id].where))]
  for (const place of places) {
    const keys = shortcutIds.filter((id) => shortcuts[id].where === place).flatMap((id) => [...shortcuts[id].keys])
    expect(new Set(keys).size).toBe(keys.length)
  }
})

test('what handles keys asks the list of shortcuts', () => {
  // A press of Enter is a button's or a form's own, and so is that a button is held; the field asks which arrow it was once the list has said that it was one.
  const own = ['Aside.tsx', 'BonusFields.tsx', 'shapes.tsx', 'Handle.tsx', 'kept.ts', 'shortcuts.ts']
  const reading = sources('web').filter(({ text }) => /\bevent\.(key|code)\b/.test(text))
  expect(reading.map(({ path }) => path.split('/').at(-1)!).filter((name) => !own.includes(name))).toEqual([])
})
