import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { parts, tank } from '../../seed/parts.ts'
import type { Part } from '../../src/model/timing/parts.ts'
import { type Server, startServer } from './server.ts'

let server: Server
beforeAll(async () => {
  server = await startServer()
})
afterAll(() => server.close())

const address = (id: string) => `/api/documents/part/${id}`
const put = <Given extends { id: string }>(part: Given, base: number | null = null) =>
  server.send('PUT', address(part.id), { base, body: { format: 1, part } })
const demo = (id: string): Part => parts.find((part) => part.id === id)!

describe('A part of the shelf', () => {
  test.each(parts)('$name is saved and read back as it was', async (part) => {
    expect((await put(part)).body.saved).toMatchObject({ kind: 'part', id: part.id, name: part.name, revision: 1 })
    expect((await server.get(address(part.id))).body.body).toEqual({ format: 1, part })
  })

  test('keeps its revisions, and tells who saves late what was saved in between', async () => {
    const part = { ...tank, id: 'tank-own' }
    await put(part)
    expect((await put({ ...part, volume: 0.0007 }, 1)).body.saved.revision).toBe(2)
    const late = await put({ ...part, volume: 0.0008 }, 1)
    expect(late.status).toBe(409)
    expect(late.body.current.body.part.volume).toBe(0.0007)
    const restored = await server.send('POST', `${address('tank-own')}/restore`, { revision: 1, base: 2 })
    expect(restored.body.saved.body.part).toEqual(part)
    await fetch(server.url + address('tank-own'), { method: 'DELETE' })
    const { body: list } = await server.get('/api/documents/part')
    expect(list.map(({ id }: Part) => id)).not.toContain('tank-own')
  })

  test.each([
    ['motor-large', { freeCurrent: 61 }, 'freeCurrent', 'at most half of the stall current (120 A), got 61'],
    ['motor-large', { freeSpeed: '600' }, 'freeSpeed', 'freeSpeed must be a number, got "600"'],
    ['motor-large', { date: '26.11.2026' }, 'date', 'date is not written as expected, got "26.11.2026"'],
    ['cylinder-20', { rod: 0.0191 }, 'rod', 'rod must be at most 0.95 of the bore (0.02 m), got 0.0191'],
    ['valve-1', { criticalRatio: 1 }, 'criticalRatio', 'criticalRatio must be at most 0.99, got 1'],
    [
      'compressor-small',
      {
        flow: [
          [200_000, 0.1],
          [200_000, 0.2],
        ],
      },
      'flow/1/0',
      'pressures must rise',
    ],
    ['tank-06', { highestPressure: 0 }, 'highestPressure', 'highestPressure must be more than 0, got 0'],
    ['wheel-100', { teeth: 12 }, 'teeth', 'not a field that is known'],
    ['wheel-100', { kind: 'spring' }, 'kind', '"spring"'],
  ])('%s with %o is refused with the path and a sentence', async (id, changes, path, words) => {
    const { status, body } = await put({ ...demo(id), ...changes, id: 'wrong' })
    expect(status).toBe(400)
    expect(body.error.path.join('/')).toBe(`body/part/${path}`)
    expect(body.error.message).toContain(words)
    expect((await server.get(address('wrong'))).status).toBe(404)
  })

  test('that does not exist is missed by its noun', async () => {
    expect((await server.get(address('nothing'))).body.error.message).toBe('There is no part with the id “nothing”')
  })
})
