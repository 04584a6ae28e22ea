import { expect, test } from 'vitest'
import { offered } from '../../src/api/http/endpoints.ts'
import { entryText } from '../../web/screens/people/entryText.ts'
import { log as german } from '../../web/words/de/log.ts'
import { log } from '../../web/words/en/log.ts'

test('whatever the log of changes can tell has words', () => {
  const told = offered().filter(({ procedure, endpoint }) => {
    const { type } = procedure._def as unknown as { type: string }
    return type === 'mutation' && endpoint.audit !== false
  })
  expect(told.length).toBeGreaterThan(30)
  for (const actions of [log.actions, german.actions])
    expect(told.map(({ name }) => name).filter((name) => !Object.hasOwn(actions, name))).toEqual([])
})

test('an entry names people, shortens lists and tells results by their totals', () => {
  const person = '2a31813a-1c54-4606-b523-7f6392508a3a'
  const side = (total: number) => ({ points: { total }, bonuses: ['moored'] })
  const result = { match: 'q1', red: side(60), blue: side(45.5) }
  const text = (detail: object) => entryText({ subject: 'cup', detail: { ...detail } }, () => 'Curlew')
  expect(text({ match: 'q1', before: null, result })).toBe('cup, match: q1, result: 60 : 45.5')
  expect(text({ seats: 2, person })).toBe('cup, seats: 2, for: Curlew')
  expect(text({ put: ['q1', 'q2', 'q3', 'q4', 'q5'], removed: [] })).toBe('cup, put in: q1 … q5 (5)')
})
