import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { seedDocuments } from '../../seed/index.ts'
import type { DesignRecord, OptionRecord } from '../../src/model/documents/index.ts'
import { harbour, tern, ternBest } from '../model/documents/harbour.ts'
import { type Server, startServer } from './server.ts'

let server: Server

beforeEach(async () => {
  server = await startServer()
})

afterEach(() => server.close())

const address = (kind: string, id: string) => `/api/documents/${kind}/${id}`
const put = (kind: string, id: string, body: unknown, base: number | null = null, note?: string) =>
  server.send('PUT', address(kind, id), { base, body, note })

const design = (): DesignRecord => ({ format: 1, game: 'harbour', robot: tern() })
const record = (): OptionRecord => {
  const { robot: _, ...option } = ternBest()
  return { format: 1, game: 'harbour', design: 'tern', option }
}

describe('A document', () => {
  test('is saved, found, listed and read at each of its revisions', async () => {
    const first = await put('game', 'harbour', harbour(), null, 'As printed')
    expect(first.status).toBe(200)
    expect(first.body.saved).toMatchObject({
      kind: 'game',
      id: 'harbour',
      name: 'Harbour',
      revision: 1,
      note: 'As printed',
    })

    const second = await put('game', 'harbour', { ...harbour(), name: 'Harbour, corrected' }, 1)
    expect(second.body.saved).toMatchObject({ revision: 2, name: 'Harbour, corrected' })

    expect((await server.get(address('game', 'harbour'))).body.body.name).toBe('Harbour, corrected')
    expect((await server.get(`${address('game', 'harbour')}?revision=1`)).body.body).toEqual(harbour())
    const { body: list } = await server.get('/api/documents/game')
    expect(list).toMatchObject([{ id: 'harbour', name: 'Harbour, corrected', revision: 2, removed: false }])
    const { body: revisions } = await server.get(`${address('game', 'harbour')}/revisions`)
    expect(revisions).toMatchObject([
      { revision: 2, note: null },
      { revision: 1, note: 'As printed' },
    ])
  })

  test('whose older revision is restored gets a new one, and keeps all', async () => {
    await put('game', 'harbour', harbour())
    await put('game', 'harbour', { ...harbour(), name: 'Other' }, 1)
    const restored = await server.send('POST', `${address('game', 'harbour')}/restore`, { revision: 1, base: 2 })
    expect(restored.body.saved).toMatchObject({ revision: 3, name: 'Harbour', note: 'Revision 1 restored' })
    expect((await server.get(`${address('game', 'harbour')}?revision=2`)).body.name).toBe('Other')
  })

  test('that is removed leaves the list, and comes back by undo', async () => {
    await put('game', 'harbour', harbour())
    const remove = (query = '') => fetch(`${server.url}${address('game', 'harbour')}${query}`, { method: 'DELETE' })
    expect(await (await remove()).json()).toEqual({ removed: true })
    expect((await server.get('/api/documents/game')).body).toEqual([])
    expect((await server.get('/api/documents/game?withRemoved=true')).body).toMatchObject([{ removed: true }])
    expect(await (await remove('?undo=true')).json()).toEqual({ removed: false })
    expect((await server.get('/api/documents/game')).body).toMatchObject([{ id: 'harbour', removed: false }])
  })

  test.each([
    ['GET', '', undefined],
    ['GET', '?revision=7', undefined],
    ['GET', '/revisions', undefined],
    ['POST', '/restore', { revision: 1, base: 1 }],
    ['DELETE', '', undefined],
  ])('that is not there is answered with 404: %s %s', async (method, rest, body) => {
    const headers = body && { 'content-type': 'application/json' }
    const init = { method, body: body && JSON.stringify(body), headers }
    const response = await fetch(server.url + address('game', 'harbour') + rest, init)
    expect(response.status).toBe(404)
    const { error } = (await response.json()) as { error: { code: string; message: string } }
    expect(error).toMatchObject({ code: 'notFound', message: expect.stringContaining('“harbour”') })
  })

  test('can have any id, as long as the address says the same', async () => {
    const id = 'hárbour/2 ?&#%'
    const answer = await put('game', encodeURIComponent(id), { ...harbour(), id })
    expect(answer.body.saved.id).toBe(id)
    expect((await server.get(address('game', encodeURIComponent(id)))).body.body.id).toBe(id)
  })
})

describe('Two people who save the same document', () => {
  test('both keep what they did: the second is told what changed, with what the edit began from', async () => {
    await put('game', 'harbour', harbour())
    await put('game', 'harbour', { ...harbour(), name: 'Hers' }, 1)
    const { status, body } = await put('game', 'harbour', { ...harbour(), name: 'His' }, 1)
    expect(status).toBe(409)
    expect(body.error).toMatchObject({ code: 'conflict', path: ['base'] })
    expect(body.error.message).toBe(
      '“Hers” was saved as revision 2 while you edited revision 1: merge both, or save a copy',
    )
    expect(body.current).toMatchObject({ revision: 2, body: { name: 'Hers' } })
    expect(body.base).toMatchObject({ revision: 1, body: { name: 'Harbour' } })
    expect((await put('game', 'harbour-2', { ...harbour(), id: 'harbour-2', name: 'His' })).status).toBe(200)
  })

  test('at the same moment get one revision and as many conflicts as others saved', async () => {
    await put('game', 'harbour', harbour())
    const names = ['A', 'B', 'C', 'D', 'E', 'F']
    const answers = await Promise.all(names.map((name) => put('game', 'harbour', { ...harbour(), name }, 1)))
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 409, 409, 409, 409, 409])
    const winner = answers.find(({ status }) => status === 200)!.body.saved
    expect(winner.revision).toBe(2)
    for (const { body } of answers.filter(({ status }) => status === 409)) {
      expect(body.current).toEqual(winner)
    }
    const { body: revisions } = await server.get(`${address('game', 'harbour')}/revisions`)
    expect(revisions).toHaveLength(2)
  })

  test('as new ones under one id are told apart too', async () => {
    await put('game', 'harbour', harbour())
    const { status, body } = await put('game', 'harbour', { ...harbour(), name: 'Another' })
    expect(status).toBe(409)
    expect(body).toMatchObject({ current: { revision: 1 }, base: null })
    expect(body.error.message).toContain('There is already “Harbour”')
  })
})

describe('A document is not saved, not even half, with', () => {
  beforeEach(async () => {
    await put('game', 'harbour', harbour())
    await put('design', 'tern', design())
  })

  const bad: [what: string, kind: string, id: string, body: unknown, path: string, words: RegExp][] = [
    [
      'a field of the wrong type',
      'game',
      'x',
      { ...harbour(), id: 'x', name: 7 },
      'body/name',
      /name must be text, got 7/,
    ],
    ['no body', 'game', 'x', undefined, 'body', /body.*missing|missing/],
    [
      'a rule broken',
      'game',
      'x',
      { ...harbour(), id: 'x', goals: [] },
      'body/sets/0/needs/pier',
      /no goal with the id “pier”/,
    ],
    ['an id that the address does not say', 'game', 'x', harbour(), 'body/id', /“harbour”, the request says “x”/],
    [
      'an id of its robot that the address does not say',
      'design',
      'x',
      design(),
      'body/robot/id',
      /“tern”, the request says “x”/,
    ],
    [
      'a game that is not there',
      'design',
      'tern',
      { ...design(), game: 'sea' },
      'body/game',
      /no game with the id “sea”/,
    ],
    [
      'a robot that does not fit its game',
      'design',
      'tern',
      { ...design(), robot: { ...tern(), carries: { crate: 1 }, preload: null, collect: {} } },
      'body/robot/carries/crate',
      /no piece with the id “crate”/,
    ],
    [
      'a design that is not there',
      'option',
      'tern-best',
      { ...record(), design: 'auk' },
      'body/design',
      /no design with the id “auk”/,
    ],
    [
      'a way to play that its design can not',
      'option',
      'tern-best',
      { ...record(), option: { ...record().option, auto: 'two' } },
      'body/option/auto',
      /no routine of the robot with the id “two”/,
    ],
    [
      'what its design has already',
      'option',
      'tern-best',
      { ...record(), option: ternBest() },
      'body/option/robot',
      /"robot" is not a field/,
    ],
  ]

  test.each(bad)('%s', async (_what, kind, id, body, path, words) => {
    const before = (await server.get(`/api/documents/${kind}?withRemoved=true`)).body
    const base = kind === 'design' && id === 'tern' ? 1 : null
    const answer = await put(kind, id, body, base)
    expect(answer.body.error?.message, JSON.stringify(answer.body)).toMatch(words)
    expect(answer.status).toBe(400)
    expect(answer.body.error.path.join('/')).toBe(path)
    expect((await server.get(`/api/documents/${kind}?withRemoved=true`)).body).toEqual(before)
  })

  test('an unknown kind, an unknown field or an id in two places', async () => {
    expect((await put('robot', 'x', {})).body.error).toMatchObject({ code: 'malformed', path: ['kind'] })
    const body = harbour()
    const odd = await server.send('PUT', address('game', 'harbour'), { base: 1, body, force: true })
    expect(odd.body.error).toMatchObject({ code: 'malformed', path: ['force'] })
    const twice = await server.send('PUT', address('game', 'harbour'), { base: 1, body, id: 'harbour' })
    expect(twice.body.error).toMatchObject({ code: 'malformed', path: ['id'] })
    expect((await server.get(`${address('game', 'harbour')}?revision=one`)).body.error).toMatchObject({
      code: 'malformed',
      path: ['revision'],
    })
  })
})

test('An option is put together from its record and its design as they are now', async () => {
  await put('game', 'harbour', harbour())
  await put('design', 'tern', design())
  await put('option', 'tern-best', record())
  await put('design', 'tern', { ...design(), robot: { ...tern(), name: 'Tern, lighter' } }, 1)
  const { status, body } = await server.get('/api/options/tern-best/resolved')
  expect(status).toBe(200)
  expect(body).toEqual({
    option: { ...ternBest(), robot: { ...tern(), name: 'Tern, lighter' } },
    game: { id: 'harbour', revision: 1 },
    design: { id: 'tern', revision: 2 },
  })
  expect((await server.get('/api/options/auk/resolved')).status).toBe(404)
})

test('A comparison and a decision name revisions that exist', async () => {
  await put('game', 'harbour', harbour())
  await put('design', 'tern', design())
  await put('option', 'tern-best', record())
  const tested = (revision: number) => ({
    format: 1,
    id: 'hang',
    name: 'To hang or not',
    question: 'Do we hang?',
    game: { id: 'harbour', revision: 1 },
    options: [{ option: { id: 'tern-best', revision }, design: { id: 'tern', revision: 1 } }],
    inputs: [],
    breakEven: null,
    seed: 1,
    result: null,
  })
  const wrong = await put('comparison', 'hang', tested(4))
  expect(wrong.status).toBe(400)
  expect(wrong.body.error).toMatchObject({
    path: ['body', 'options', 0, 'option'],
    message: 'There is no option with the id “tern-best” in revision 4',
  })
  expect((await put('comparison', 'hang', tested(1))).status).toBe(200)

  // One that says nothing about what counts means points; wins need a field, whose documents exist.
  const [own] = tested(1).options
  const field = (opponent: number) => ({
    partners: [own, own],
    opponents: [own, own, tested(opponent).options[0]],
    level: null,
    replicates: 2000,
  })
  const judged = (more: object) =>
    server.send('PUT', '/api/documents/comparison/judged', {
      base: null,
      body: { ...tested(1), id: 'judged', ...more },
    })
  const without = await judged({ objective: 'win' })
  expect(without.status).toBe(400)
  expect(without.body.error).toMatchObject({
    path: ['body', 'field'],
    message: expect.stringContaining('two partners'),
  })
  const unknown = await judged({ objective: 'win', field: field(7) })
  expect(unknown.body.error.path).toEqual(['body', 'field', 'opponents', 2, 'option'])
  const kept = await judged({ objective: 'rankingPoints', field: field(1) })
  expect(kept.body.saved.body.field).toEqual(field(1))
})

test('The demo season passes every check, in the order in which it is put in', async () => {
  const documents = seedDocuments()
  expect(documents.length).toBeGreaterThan(10)
  for (const { kind, id, body } of documents) {
    const answer = await put(kind, encodeURIComponent(id), body)
    expect(answer.body.error, `${kind} ${id}`).toBeUndefined()
    expect(answer.body.saved.body).toEqual(JSON.parse(JSON.stringify(body)))
  }
})

test('An override is about something that is compared, and a number is overridden once', async () => {
  await put('game', 'harbour', harbour())
  await put('design', 'tern', design())
  await put('option', 'tern-best', record())
  const body = {
    format: 1,
    id: 'hang',
    name: 'To hang or not',
    question: 'Do we hang?',
    game: { id: 'harbour', revision: 1 },
    options: [{ option: { id: 'tern-best', revision: 1 }, design: { id: 'tern', revision: 1 } }],
    inputs: [],
    breakEven: null,
    seed: 1,
    result: null,
  }
  const said = { reason: 'Timed it', who: 'Tilly', on: '2027-01-16T15:20Z' }
  const points = { ...said, id: 'a', kind: 'points', option: 'tern-best', points: 61 }
  const leg = { ...said, id: 'b', kind: 'leg', robot: 'nobody', leg: { kind: 'finish', finish: 'x' } }
  const whole = { kind: 'fixed', seconds: 4 }
  const save = (overrides: unknown[]) =>
    server.send('PUT', '/api/documents/comparison/hang', { base: null, body: { ...body, overrides } })
  const twice = await save([points, { ...points, id: 'c', points: 3 }])
  expect(twice.status).toBe(400)
  expect(twice.body.error).toMatchObject({
    path: ['body', 'overrides', 1],
    message: 'The override “c” is about a number that is overridden already',
  })
  const elsewhere = await save([
    { ...points, option: 'nobody' },
    { ...leg, whole },
  ])
  expect(elsewhere.body.error).toMatchObject({
    path: ['body', 'overrides', 0, 'option'],
    message: 'The option “nobody” is not among those compared',
  })
  expect((await save([{ ...leg, whole: { kind: 'fixed', seconds: -1 } }])).status).toBe(400)
  expect((await save([points])).status).toBe(200)
})
