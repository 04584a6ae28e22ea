import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { harbour, ternBest } from '../model/documents/harbour.ts'
import { type Server, startServer } from './server.ts'

let server: Server

beforeAll(async () => {
  server = await startServer()
})

afterAll(() => server.close())

const json = { 'content-type': 'application/json' }

describe('A body is refused', () => {
  const body = () => JSON.stringify({ game: harbour(), option: ternBest() })

  test.each([
    ['NaN', (text: string) => text.replace('"topSpeed":3.5', '"topSpeed":NaN'), /not valid JSON: unexpected token 'N'/],
    ['Infinity', (text: string) => text.replace('"topSpeed":3.5', '"topSpeed":Infinity'), /unexpected token 'I'/],
    ['half of it', (text: string) => text.slice(0, text.length / 2), /not valid JSON/],
    ['nothing', () => '', /unexpected end of JSON input/],
    ['__proto__', () => '{"__proto__":{"game":{}}}', /__proto__/],
    ['text', () => '"plan this"', /must be an object, got "plan this"/],
    ['a list', () => '[]', /must be an object, got a list of 0/],
    ['deep nesting', () => '['.repeat(500_000) + ']'.repeat(500_000), /nested 500000 levels deep/],
    ['objects nested deeply', () => `${'{"a":'.repeat(100_000)}1${'}'.repeat(100_000)}`, /nested 100000 levels deep/],
  ])('with 400 for %s', async (_what, change, words) => {
    const answer = await server.raw('/api/compute/plan', change(body()), json)
    expect(answer.body.error.message).toMatch(words)
    expect(answer.status).toBe(400)
    expect(answer.body.error.path).toEqual([])
  })

  test('with 400 and the path for a number too large to be finite', async () => {
    const answer = await server.raw('/api/compute/plan', body().replace('"topSpeed":3.5', '"topSpeed":1e999'), json)
    expect(answer.status).toBe(400)
    expect(answer.body.error.path).toEqual(['option', 'robot', 'drive', 'topSpeed'])
    expect(answer.body.error.message).toBe('topSpeed must be a finite number, got Infinity')
  })

  test('with 413 above 2 MB, and is read up to there', async () => {
    const padded = (size: number) => body() + ' '.repeat(size - body().length)
    const large = await server.raw('/api/compute/plan', padded(2 * 1024 * 1024 + 1), json)
    expect(large.status).toBe(413)
    expect(large.body.error).toMatchObject({ code: 'tooLarge', message: expect.stringContaining('2 MB') })
    expect((await server.raw('/api/compute/plan', padded(2 * 1024 * 1024), json)).status).toBe(200)
  })

  test.each(['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data; boundary=x', 'application/xml'])(
    'with 415 as %s',
    async (type) => {
      const answer = await server.raw('/api/compute/plan', body(), { 'content-type': type })
      expect(answer.status).toBe(415)
      expect(answer.body.error).toMatchObject({ code: 'notJson', message: expect.stringContaining('application/json') })
    },
  )

  test('with 415 as bytes of no type', async () => {
    const answer = await server.raw('/api/compute/plan', new Uint8Array([0x7b, 0x7d]), {})
    expect(answer.status).toBe(415)
  })
})
