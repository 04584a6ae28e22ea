import { Ajv2020 } from 'ajv/dist/2020.js'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { game } from '../../seed/game.ts'
import { withValueAt } from '../../web/data/place.ts'
import { harbour } from '../model/documents/harbour.ts'
import { type Server, startServer } from './server.ts'

let server: Server
let valid: (body: unknown) => boolean
beforeAll(async () => {
  server = await startServer()
  const { body } = await server.get('/api/schemas/game.json')
  const validator = new Ajv2020({ strict: true, allErrors: true, allowUnionTypes: true }).compile(body)
  valid = (document) => validator(document)
})
afterAll(() => server.close())

const check = (body: unknown) => server.send('POST', '/api/documents/game/check', { body })

/** Games with the wrong form, by the place that is wrong. */
const broken: [string, unknown][] = [
  ['clock/teleop', withValueAt(game, ['clock', 'teleop'], -5)],
  ['surprise', { ...game, surprise: 1 }],
  ['format', { ...game, format: 2 }],
  ['pieces', { ...game, pieces: [] }],
  ['goals/0/award/kind', withValueAt(game, ['goals', 0, 'award', 'kind'], 'sometimes')],
  ['goals/1/capacity', withValueAt(game, ['goals', 1, 'capacity'], 1.5)],
  ['sources/0/spots/0/at', withValueAt(game, ['sources', 0, 'spots', 0, 'at'], [1])],
  ['name', withValueAt(game, ['name'], undefined)],
  ['bonuses/0/metric/kind', withValueAt(game, ['bonuses', 0, 'metric', 'kind'], 'luck')],
  ['field/symmetry', withValueAt(game, ['field', 'symmetry'], 'none')],
]

describe('the published schema of a game', () => {
  // ajv is an implementation of JSON Schema of its own: it and the server's contract must judge alike.
  test('takes every game that the server takes', async () => {
    for (const good of [game, harbour(), { ...game, leave: null, limits: undefined }]) {
      const body = JSON.parse(JSON.stringify(good))
      expect(valid(body)).toBe(true)
      expect((await check(body)).body).toEqual({ shape: true, problems: [] })
    }
  })

  test.each(broken)('refuses a game that is wrong at %s, as the server does, which says where', async (place, body) => {
    expect(valid(body)).toBe(false)
    const answer = await check(body)
    expect(answer.status).toBe(200)
    expect(answer.body.shape).toBe(false)
    expect(answer.body.problems.map(({ path }: { path: string[] }) => path.join('/'))).toContain(place)
  })

  test('says its draft and a lasting name, and describes units', async () => {
    const { body } = await server.get('/api/schemas/game.json')
    expect(body.$schema).toBe('https://json-schema.org/draft/2020-12/schema')
    expect(body.$id).toBe('urn:cyclewright:schema:game:1')
    expect(body.$defs.Field.properties.length).toMatchObject({ description: 'm', minimum: 1 })
  })
})

test('a game of the right form that does not fit together is told what does not fit, and nothing is saved', async () => {
  const body = withValueAt(game, ['goals', 0, 'accepts', 0], 'net')
  expect((await check(body)).body).toEqual({
    shape: true,
    problems: [
      {
        path: ['goals', 0, 'accepts', 0],
        message: 'There is no piece with the id “net”',
        said: { code: 'unknown', parts: { thing: 'piece', id: 'net' } },
      },
    ],
  })
  expect((await server.get('/api/documents/game')).body).toEqual([])
})

test('what is no document at all is told so too', async () => {
  expect((await check(null)).body).toMatchObject({ shape: false, problems: [{ path: [] }] })
})
