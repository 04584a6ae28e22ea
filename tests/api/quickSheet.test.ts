import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { harbour } from '../model/documents/harbour.ts'
import { lowWay, sheetOf } from '../model/sheet/sheets.ts'
import { type Server, startServer } from './server.ts'

let server: Server

beforeEach(async () => {
  server = await startServer()
  await server.send('PUT', '/api/documents/game/harbour', { base: null, body: harbour() })
})

afterEach(() => server.close())

const address = '/api/documents/quickSheet/first'
const put = (body: unknown, base: number | null = null) => server.send('PUT', address, { base, body })

describe('A quick sheet', () => {
  test('is saved, corrected, restored, and a second writer is told what was saved in between', async () => {
    expect((await put(sheetOf([lowWay()]))).body.saved).toMatchObject({ revision: 1, name: 'First Saturday' })
    expect((await put(sheetOf([lowWay({ load: 2 })]), 1)).body.saved.revision).toBe(2)
    const late = await put(sheetOf([lowWay({ load: 3 })]), 1)
    expect(late.status).toBe(409)
    expect(late.body.current.body.ways[0].load).toBe(2)
    expect(late.body.base.body.ways[0].load).toBe(1)
    const restored = await server.send('POST', `${address}/restore`, { revision: 1, base: 2 })
    expect(restored.body.saved).toMatchObject({ revision: 3, body: { ways: [{ load: 1 }] } })
    expect((await server.get('/api/documents/quickSheet')).body).toMatchObject([{ id: 'first', revision: 3 }])
  })

  test.each([
    ['load', { load: 0 }, 'body/ways/0/load', 'load must be at least 1, got 0'],
    ['success', { score: { ...lowWay().score, success: 1.2 } }, 'body/ways/0/score/success', 'at most 1, got 1.2'],
    [
      'time',
      { collect: { time: { kind: 'fixed', seconds: -1 }, belief: null } },
      'body/ways/0/collect/time/seconds',
      'got -1',
    ],
    [
      'range',
      { collect: { time: { kind: 'range', low: 9, likely: 8, high: 10 }, belief: null } },
      'body/ways/0/collect/time/likely',
      'at least low (9), got 8',
    ],
    [
      'kind',
      { collect: { time: { kind: 'samples', seconds: [1, 2, 3] }, belief: null } },
      'body/ways/0/collect/time/kind',
      '"samples"',
    ],
    ['source', { sources: ['moon'] }, 'body/ways/0/sources/0', 'There is no source with the id “moon”'],
    ['finish', { finish: 'moon' }, 'body/ways/0/finish', 'There is no finish with the id “moon”'],
    ['surprise', { surprise: 1 }, 'body/ways/0/surprise', 'not a field that is known'],
  ])(
    'with a wrong %s is refused with the path and a sentence, and nothing is saved',
    async (_, changes, path, words) => {
      const { status, body } = await put(sheetOf([lowWay(changes as object)]))
      expect(status).toBe(400)
      expect(body.error.path.join('/')).toBe(path)
      expect(body.error.message).toContain(words)
      expect((await server.get(address)).status).toBe(404)
    },
  )

  test('of a game that is not there is refused', async () => {
    const { status, body } = await put(sheetOf([], 'elsewhere'))
    expect([status, body.error.path]).toEqual([400, ['body', 'game']])
    expect(body.error.message).toBe('There is no game with the id “elsewhere” in revision 1')
  })
})

test('A reading names a revision of a game that is there', async () => {
  const reading = {
    format: 1,
    id: 'wait',
    name: 'If robots may wait',
    rule: '4.2.1',
    game: { id: 'harbour', revision: 1 },
  }
  const save = (body: unknown) => server.send('PUT', '/api/documents/reading/wait', { base: null, body })
  expect((await save({ ...reading, game: { id: 'harbour', revision: 9 } })).body.error.path).toEqual(['body', 'game'])
  expect((await save(reading)).body.saved.body).toEqual(reading)
})

test('A reading is made of changed rules in one step, and the printed rules stay the newest; all of it or nothing', async () => {
  const before = (await server.get('/api/documents/game/harbour')).body
  const changed = { ...before.body, clock: { ...before.body.clock, teleop: 100 } }
  const reading = { id: 'short', name: 'If the match ends early', rule: '3.1' }
  const make = (more: object = {}) =>
    server.send('POST', '/api/documents/game/harbour/readings', {
      base: before.revision,
      body: changed,
      reading,
      ...more,
    })
  for (const [wrong, path] of [
    [{ body: { ...changed, clock: { ...changed.clock, endgame: 101 } } }, ['body', 'clock', 'endgame']],
    [{ body: { ...changed, id: 'moon' } }, ['body', 'id']],
    [{ reading: { ...reading, name: '' } }, ['reading', 'name']],
  ] as const) {
    const { status, body } = await make(wrong)
    expect(status).toBe(400)
    expect(body.error.path).toEqual(path)
  }
  const { status, body } = await make()
  expect(status).toBe(200)
  expect(body.saved.game).toMatchObject({ revision: before.revision + 2, body: before.body })
  expect(body.saved.reading.body).toEqual({
    format: 1,
    ...reading,
    game: { id: 'harbour', revision: before.revision + 1 },
  })
  const kept = (await server.get(`/api/documents/game/harbour?revision=${before.revision + 1}`)).body
  expect(kept.body.clock.teleop).toBe(100)
  // From an older revision, or under a name that is taken, nothing is kept at all.
  expect((await make({ reading: { ...reading, id: 'other' } })).status).toBe(409)
  expect((await make({ base: before.revision + 2 })).status).toBe(409)
  expect((await server.get('/api/documents/game/harbour')).body.revision).toBe(before.revision + 2)
  expect((await server.get('/api/documents/reading')).body).toHaveLength(1)
})
