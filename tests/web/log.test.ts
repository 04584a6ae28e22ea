import { expect, test } from 'vitest'
import { offered } from '../../src/api/http/endpoints.ts'
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
