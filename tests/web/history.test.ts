import { expect, test } from 'vitest'
import { begin, change, pause, redo, undo } from '../../web/data/history.ts'

test('typing in one field is one step, the next field another', () => {
  let history = begin('')
  for (const text of ['1', '1.', '1.5']) history = change(history, text, 'time')
  history = change(history, '1.5 lift', 'name')
  expect(undo(history).present).toBe('1.5')
  expect(undo(undo(history)).present).toBe('')
  expect(redo(undo(history)).present).toBe('1.5 lift')
})

test('coming back to a field later is a step of its own', () => {
  let history = change(begin(0), 1, 'time')
  history = pause(history)
  history = change(history, 2, 'time')
  expect(undo(history).present).toBe(1)
})

test('a new edit after undo ends what could be redone', () => {
  const history = change(undo(change(begin(0), 1)), 5)
  expect(redo(history).present).toBe(5)
  expect(undo(history).present).toBe(0)
})

test('undo at the beginning and redo at the end change nothing', () => {
  expect(undo(begin(3)).present).toBe(3)
  expect(redo(begin(3)).present).toBe(3)
})
