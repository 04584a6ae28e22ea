import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { harbour, ternBest } from '../model/documents/harbour.ts'
import { rows } from './badDocuments.ts'
import { type Server, startServer } from './server.ts'

let server: Server

beforeAll(async () => {
  server = await startServer()
})

afterAll(() => server.close())

describe('A plan is refused for', () => {
  test.each(rows)('$what', async ({ at = [], change, status = 400, path = at, words }) => {
    const body = { game: harbour(), option: ternBest() }
    change(body)
    const answer = await server.send('POST', '/api/compute/plan', body)
    expect(answer.body.error?.message, JSON.stringify(answer.body).slice(0, 300)).toMatch(words)
    expect(answer.status).toBe(status)
    expect(answer.body.error.path ?? []).toEqual(path)
    expect(Object.keys(answer.body)).toEqual(['error'])
  })

  test('nothing, when nothing is wrong', async () => {
    const { status } = await server.send('POST', '/api/compute/plan', { game: harbour(), option: ternBest() })
    expect(status).toBe(200)
  })
})
