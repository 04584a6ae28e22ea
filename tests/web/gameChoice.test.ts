import { expect, test } from 'vitest'
import type { DocumentSummary } from '../../src/store/types.ts'
import { gameChosen } from '../../web/data/useGameChoice.ts'

const game = (id: string, savedAt: string) => ({ id, name: id, savedAt, revision: 1 }) as unknown as DocumentSummary
const games = [
  game('demo', '2031-01-02T10:00:00.000Z'),
  game('ours', '2031-01-05T10:00:00.000Z'),
  game('draft', '2031-01-03T10:00:00.000Z'),
]

test('something new is for the game saved last, unless the address or a person names another', () => {
  expect(gameChosen(games, null, null)?.id).toBe('ours')
  expect(gameChosen(games, null, 'draft')?.id).toBe('draft')
  expect(gameChosen(games, 'demo', 'draft')?.id).toBe('demo')
  expect(gameChosen(games, null, 'removed')?.id).toBe('ours')
  expect(gameChosen([], null, 'removed')).toBeNull()
})
