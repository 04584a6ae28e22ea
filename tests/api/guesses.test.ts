import { networkInterfaces } from 'node:os'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { mostCorrections, mostRounds } from '../../src/store/index.ts'
import { harbour } from '../model/documents/harbour.ts'
import { lowWay, sheetOf } from '../model/sheet/sheets.ts'
import { type Server, startServer } from './server.ts'

let server: Server

async function start(options = {}) {
  server = await startServer(options)
  await server.send('PUT', '/api/documents/game/harbour', { base: null, body: harbour() })
  const body = sheetOf([lowWay(), lowWay({ id: 'hang', name: 'Hang', finish: 'davit' })])
  await server.send('PUT', '/api/documents/quickSheet/first', { base: null, body })
}

beforeEach(() => start())
afterEach(() => server.close())

const rounds = '/api/guess-rounds'
const device = (number: number) => `device${String(number).padStart(14, '0')}`
const open = async (way = 'hang', leg = 'finish') => {
  const { body } = await server.send('POST', rounds, { sheet: 'first', way, leg })
  return body.code as string
}
const give = (code: string, number: number, guess: unknown) =>
  server.send('PUT', `${rounds}/${code}/guesses/${device(number)}`, { guess })
const close = (code: string) => server.send('POST', `${rounds}/${code}/close`, {})

/** A guess that would be recognised wherever it appeared. */
const telling = (number: number) => ({ low: 41.125 + number, likely: 241.375 + number, high: 441.625 + number })

describe('A round of guesses', () => {
  test('says what is guessed, in the words of the sheet and the game', async () => {
    const { status, body } = await server.send('POST', rounds, { sheet: 'first', way: 'low', leg: 'collect' })
    expect(status).toBe(200)
    expect(body).toMatchObject({ leg: 'collect', about: { way: 'All low', places: ['Slip'], load: 1 }, count: 0 })
    expect(body.code).toMatch(/^[A-Z0-9]{6}$/)
    expect(body.closedAt).toBeNull()
    expect((await server.get(`${rounds}?sheet=first`)).body).toEqual([body])
  })

  test('takes the guesses of thirty phones at once, one each', async () => {
    const code = await open()
    const answers = await Promise.all(Array.from({ length: 30 }, (_, number) => give(code, number, telling(number))))
    expect(answers.map(({ status }) => status)).toEqual(answers.map(() => 200))
    expect(answers.map(({ body }) => body.count).sort((a, b) => a - b)).toEqual(answers.map((_, index) => index + 1))
    const { body } = await close(code)
    expect(body.count).toBe(30)
    expect(body.guesses).toEqual(Array.from({ length: 30 }, (_, number) => telling(number)))
  })

  test('shows no guess to anybody before it is closed, by whatever address', async () => {
    const code = await open()
    const given = await give(code, 1, telling(1))
    const trpc = (name: string, input: unknown) =>
      server.get(`/trpc/${name}?input=${encodeURIComponent(JSON.stringify(input))}`)
    const seen = await Promise.all([
      server.get(`${rounds}/${code}`),
      server.get(`${rounds}?sheet=first`),
      server.get(`${rounds}/${code}/guesses/${device(1)}`),
      server.get(`${rounds}/${code}/guesses`),
      server.get('/api/documents/quickSheet/first'),
      server.get('/health'),
      trpc('guesses.get', { code }),
      trpc('guesses.list', { sheet: 'first' }),
    ])
    const everything = JSON.stringify([given, ...seen].map(({ body }) => body))
    expect(everything).toContain('"count":1')
    expect(everything).not.toMatch(/41\.125|42\.125|242\.375|442\.625/)
    // A refusal repeats the address that was asked for, and says no more.
    expect(everything.replaceAll(`${code}/guesses/${device(1)}`, '')).not.toContain(device(1))
    expect(seen[0]?.body.guesses).toBeNull()
    await close(code)
    const after = JSON.stringify((await server.get(`${rounds}/${code}`)).body)
    expect(after).toContain('242.375')
    expect(after).not.toContain(device(1))
  })

  test('lets a device correct its guess, and counts it once', async () => {
    const code = await open()
    expect((await give(code, 1, telling(1))).body).toEqual({ count: 1, corrected: false })
    expect((await give(code, 1, telling(9))).body).toEqual({ count: 1, corrected: true })
    expect((await close(code)).body.guesses).toEqual([telling(9)])
  })

  test('that is closed takes no more, stays closed, and shows the same again', async () => {
    const code = await open()
    await give(code, 1, telling(1))
    const first = await close(code)
    const late = await give(code, 2, telling(2))
    expect(late.status).toBe(409)
    expect(late.body.error).toMatchObject({ code: 'conflict', path: ['code'] })
    expect(late.body.error.message).toContain('The round is closed')
    expect((await close(code)).body).toEqual(first.body)
  })

  test('is closed by who opened it alone, where it was opened with a key; the database keeps no key', async () => {
    const key = 'k'.repeat(24)
    const { body } = await server.send('POST', rounds, { sheet: 'first', way: 'hang', leg: 'finish', closingKey: key })
    expect(body.keyed).toBe(true)
    const closeWith = (more: object) => server.send('POST', `${rounds}/${body.code}/close`, more)
    for (const other of [{}, { closingKey: 'j'.repeat(24) }]) {
      const { status, body: refused } = await closeWith(other)
      expect(status).toBe(403)
      expect(refused.error).toMatchObject({ code: 'forbidden', path: ['closingKey'] })
    }
    expect((await server.get(`${rounds}/${body.code}`)).body).toMatchObject({ closedAt: null, guesses: null })
    expect((await closeWith({ closingKey: 'short' })).status).toBe(400)
    const closed = await closeWith({ closingKey: key })
    expect(closed.status).toBe(200)
    expect(closed.body.closedAt).not.toBeNull()
    expect(JSON.stringify([body, closed.body])).not.toContain(key)
  })

  test('is closed without its key only by who says so, and that is seen wherever the round is', async () => {
    const sent = { sheet: 'first', way: 'hang', leg: 'finish', closingKey: 'k'.repeat(24) }
    const { body } = await server.send('POST', rounds, sent)
    await give(body.code, 1, telling(1))
    expect((await server.send('POST', `${rounds}/${body.code}/close`, { anyway: false })).status).toBe(403)
    const closed = await server.send('POST', `${rounds}/${body.code}/close`, { anyway: true })
    expect(closed.body).toMatchObject({ closedAnyway: true, guesses: [telling(1)] })
    expect((await server.get(`${rounds}?sheet=first`)).body[0]).toMatchObject({ closedAnyway: true })
    // With its key, or where there is none, it is an ordinary closing whatever else is said.
    const own = (await server.send('POST', rounds, sent)).body.code
    const request = { closingKey: sent.closingKey, anyway: true }
    expect((await server.send('POST', `${rounds}/${own}/close`, request)).body.closedAnyway).toBe(false)
    const free = await open()
    expect((await server.send('POST', `${rounds}/${free}/close`, { anyway: true })).body.closedAnyway).toBe(false)
  })

  test('that is removed is nowhere and takes no guess, and is brought back with all of them', async () => {
    const code = await open()
    await give(code, 1, telling(1))
    const remove = (more: object = {}) => server.send('POST', `${rounds}/${code}/remove`, more)
    expect((await remove()).body).toEqual({ removed: true })
    expect((await server.get(`${rounds}?sheet=first`)).body).toEqual([])
    const asked = [server.get(`${rounds}/${code}`), give(code, 2, telling(2)), close(code)]
    expect((await Promise.all(asked)).map(({ status }) => status)).toEqual([404, 404, 404])
    expect((await remove({ undo: true })).body).toEqual({ removed: false })
    expect((await close(code)).body.guesses).toEqual([telling(1)])
    expect((await server.send('POST', `${rounds}/ZZZZZZ/remove`, {})).status).toBe(404)
  })

  test('knows how many devices have opened it and not guessed, each once', async () => {
    const code = await open()
    const arrive = (number: number) => server.send('PUT', `${rounds}/${code}/arrivals/${device(number)}`, {})
    await arrive(1)
    await arrive(1)
    expect((await arrive(2)).body).toMatchObject({ arrived: 2, count: 0 })
    await give(code, 2, telling(2))
    // Who guesses without having said that it is there is there, too.
    await give(code, 3, telling(3))
    expect((await server.get(`${rounds}/${code}`)).body).toMatchObject({ arrived: 3, count: 2 })
    expect((await server.get(`${rounds}?sheet=first`)).body[0]).toMatchObject({ arrived: 3, count: 2, keyed: false })
    await close(code)
    expect((await arrive(4)).body.arrived).toBe(3)
    expect((await server.send('PUT', `${rounds}/ZZZZZZ/arrivals/${device(1)}`, {})).status).toBe(404)
  })

  test('is closed while others still send: every guess is either taken and shown, or refused', async () => {
    const code = await open()
    const sent = Array.from({ length: 20 }, (_, number) => give(code, number, telling(number)))
    const closing = close(code)
    const taken = (await Promise.all(sent)).filter(({ status }) => status === 200).length
    await closing
    expect((await server.get(`${rounds}/${code}`)).body.guesses).toHaveLength(taken)
  })

  test('stops a device that corrects without end', async () => {
    const code = await open()
    for (let turn = 0; turn <= mostCorrections; turn++) expect((await give(code, 1, telling(turn))).status).toBe(200)
    const { status, body } = await give(code, 1, telling(0))
    expect([status, body.error.path]).toEqual([409, ['device']])
  })
})

describe('A file of rounds', () => {
  const fileOf = (sheet: string) => server.get(`${rounds}/of/${sheet}`)
  const bring = (sheet: string, file: unknown) => server.send('POST', `${rounds}/of/${sheet}`, { file })

  /** Two closed rounds and an open one on the sheet, and the file that it gives. */
  async function held() {
    const [first, second, still] = [await open(), await open('low', 'score'), await open()]
    for (const [code, number] of [
      [first, 1],
      [first, 2],
      [second, 3],
      [still, 4],
    ] as const)
      await give(code, number, telling(number))
    await close(first)
    await close(second)
    return { first, second, still, file: (await fileOf('first')).body }
  }

  test('holds what is closed and nothing of what is open, in the form that is published', async () => {
    const { first, second, file } = await held()
    expect(file).toMatchObject({ format: 1, sheet: { id: 'first', name: 'First Saturday' } })
    expect(file.rounds.map(({ code, guesses }: { code: string; guesses: unknown }) => [code, guesses])).toEqual([
      [first, [telling(1), telling(2)]],
      [second, [telling(3)]],
    ])
    expect(JSON.stringify(file)).not.toMatch(/device|45\.125/)
    // ajv is an implementation of JSON Schema of its own.
    const { body: schema } = await server.get('/api/schemas/guess-rounds.json')
    const valid = new Ajv2020({ strict: true, allowUnionTypes: true, formats: { 'date-time': true } }).compile(schema)
    expect(valid(file)).toBe(true)
    expect(valid({ ...file, rounds: [{ ...file.rounds[0], guesses: [{ low: 1 }] }] })).toBe(false)
    expect(valid({ ...file, surprise: 1 })).toBe(false)
  })

  test('comes into another server with everything, and the second time changes nothing', async () => {
    const { file } = await held()
    await server.close()
    await start()
    expect((await bring('first', file)).body).toEqual({ added: 2, already: 0 })
    expect((await bring('first', file)).body).toEqual({ added: 0, already: 2 })
    expect((await fileOf('first')).body).toEqual(file)
    const [second, first] = (await server.get(`${rounds}?sheet=first`)).body
    expect(first).toMatchObject({ count: 2, keyed: false, broughtAt: expect.stringMatching(/^20/) })
    expect(first.closedAt).toBe(file.rounds[0].closedAt)
    // Nobody corrects a guess that came in.
    expect((await give(second.code, 3, telling(9))).status).toBe(409)
  })

  test('comes to another sheet of the same server under new codes, and brings back what was removed', async () => {
    const { first, file } = await held()
    const { body: sheet } = await server.get('/api/documents/quickSheet/first')
    await server.send('PUT', '/api/documents/quickSheet/copy', { base: null, body: { ...sheet.body, id: 'copy' } })
    expect((await bring('copy', file)).body).toEqual({ added: 2, already: 0 })
    expect((await bring('copy', file)).body).toEqual({ added: 0, already: 2 })
    const copied = (await fileOf('copy')).body.rounds
    expect(copied.map(({ guesses }: { guesses: unknown }) => guesses)).toEqual([[telling(1), telling(2)], [telling(3)]])
    expect(copied.map(({ code }: { code: string }) => code)).not.toContain(first)
    await server.send('POST', `${rounds}/${first}/remove`, {})
    expect((await fileOf('first')).body.rounds).toHaveLength(1)
    expect((await bring('first', file)).body).toEqual({ added: 0, already: 2 })
    expect((await fileOf('first')).body).toEqual(file)
  })

  test('that is broken is refused as a whole, with the place and a sentence', async () => {
    const { file } = await held()
    const round = file.rounds[0]
    const broken: [unknown, (string | number)[], RegExp][] = [
      [null, [], /an object, got null/],
      [{ ...file, format: 2 }, ['format'], /format must be 1/],
      [{ ...file, rounds: [{ ...round, code: 'x' }] }, ['rounds', 0, 'code'], /six letters and figures.*"x"/],
      [{ ...file, rounds: [{ ...round, leg: 'swim' }] }, ['rounds', 0, 'leg'], /"swim"/],
      [
        { ...file, rounds: [round, { ...round, guesses: [{ low: 9, likely: 8, high: 10 }] }] },
        ['rounds', 1, 'guesses', 0, 'likely'],
        /at least low \(9\), got 8/,
      ],
      [{ ...file, rounds: [round, round] }, ['rounds'], /two rounds with the code/],
      [
        { ...file, rounds: [{ ...round, closedAt: '2020-01-01T00:00:00Z' }] },
        ['rounds', 0, 'closedAt'],
        /closed before it is opened/,
      ],
      [{ ...file, rounds: [{ ...round, openedAt: 'yesterday' }] }, ['rounds', 0, 'openedAt'], /"yesterday"/],
      [{ ...file, rounds: Array.from({ length: mostRounds + 1 }, () => round) }, ['rounds'], /at most 200/],
    ]
    await server.close()
    await start()
    for (const [sent, path, sentence] of broken) {
      const { status, body } = await bring('first', sent)
      expect([status, body.error.path, body.error.message]).toEqual([
        400,
        ['file', ...path],
        expect.stringMatching(sentence),
      ])
    }
    expect((await bring('none', file)).status).toBe(404)
    expect((await fileOf('none')).status).toBe(404)
    expect((await server.get(`${rounds}?sheet=first`)).body).toEqual([])
  })

  test('with more rounds than the sheet takes is refused, and what was removed stays so', async () => {
    const { first, file } = await held()
    await server.send('POST', `${rounds}/${first}/remove`, {})
    const many = Array.from({ length: mostRounds }, (_, index) => ({
      ...file.rounds[index === 0 ? 0 : 1],
      code: `A${String(index).padStart(5, '0')}`,
      ...(index > 0 && { openedAt: new Date(Date.UTC(2031, 0, 1, 0, 0, index)), closedAt: '2031-02-01T00:00:00Z' }),
    }))
    expect((await bring('first', { ...file, rounds: many })).status).toBe(409)
    expect((await server.get(`${rounds}?sheet=first`)).body).toHaveLength(2)
  })
})

test('A sheet takes many rounds, and says so when it takes no more', async () => {
  for (let number = 0; number < mostRounds; number++) expect(await open()).toMatch(/^[A-Z0-9]{6}$/)
  const { status, body } = await server.send('POST', rounds, { sheet: 'first', way: 'low', leg: 'score' })
  expect([status, body.error.path]).toEqual([409, ['sheet']])
  expect((await server.get(`${rounds}?sheet=first`)).body).toHaveLength(mostRounds)
})

describe('Nonsense is answered with a path and a sentence', () => {
  test.each([
    [{ low: 9, likely: 8, high: 10 }, ['guess', 'likely'], 'likely must be at least low (9), got 8'],
    [{ low: 1, likely: 8, high: 7 }, ['guess', 'high'], 'high must be at least likely (8), got 7'],
    [{ low: -1, likely: 8, high: 9 }, ['guess', 'low'], 'low must be at least 0, got -1'],
    [{ low: 1, likely: 8, high: 1e9 }, ['guess', 'high'], 'high must be at most 600, got 1000000000'],
    [{ low: '1', likely: 8, high: 9 }, ['guess', 'low'], 'low must be a number, got "1"'],
    [{ low: 1, likely: 8 }, ['guess', 'high'], 'high is missing'],
    [{ low: 1, likely: 8, high: 9, name: 'me' }, ['guess', 'name'], '"name" is not a field that is known here'],
  ])('guess %j', async (guess, path, message) => {
    const { status, body } = await give(await open(), 1, guess)
    expect(status).toBe(400)
    expect(body.error).toMatchObject({ code: 'malformed', path, message })
  })

  test('codes, devices, sheets, ways and legs that are none', async () => {
    const code = await open()
    const guess = { low: 1, likely: 2, high: 3 }
    const asked: [Promise<{ status: number; body: { error: { path: string[] } } }>, number, string[]][] = [
      [server.get(`${rounds}/ZZZZZZ`), 404, ['code']],
      [server.get(`${rounds}/zz`), 400, ['code']],
      [give('ZZZZZZ', 1, guess), 404, ['code']],
      [close('ZZZZZZ'), 404, ['code']],
      [server.send('PUT', `${rounds}/${code}/guesses/short`, { guess }), 400, ['device']],
      [server.send('POST', rounds, { sheet: 'none', way: 'low', leg: 'score' }), 404, ['id']],
      [server.send('POST', rounds, { sheet: 'first', way: 'none', leg: 'score' }), 400, ['way']],
      [server.send('POST', rounds, { sheet: 'first', way: 'low', leg: 'finish' }), 400, ['leg']],
      [server.send('POST', rounds, { sheet: 'first', way: 'low', leg: 'swim' }), 400, ['leg']],
    ]
    for (const [answer, status, path] of asked) {
      const found = await answer
      expect([found.status, found.body.error.path]).toEqual([status, path])
    }
  })

  test('a guess sent from another site’s page, too large, or not as JSON', async () => {
    const code = await open()
    const path = `${rounds}/${code}/guesses/${device(1)}`
    const body = { guess: { low: 1, likely: 2, high: 3 } }
    expect((await server.send('PUT', path, body, { 'sec-fetch-site': 'cross-site' })).status).toBe(403)
    expect((await server.send('PUT', path, { ...body, filler: 'x'.repeat(2_100_000) })).status).toBe(413)
    expect((await server.send('PUT', path, body, { 'content-type': 'text/plain' })).status).toBe(415)
  })
})

test('A device that asks without end is told to wait, and everything but guesses goes on', async () => {
  await server.close()
  await start({ mostGuessRequests: 20 })
  const code = await open()
  const answers = await Promise.all(Array.from({ length: 30 }, () => server.get(`${rounds}/${code}`)))
  const refused = answers.filter(({ status }) => status === 429)
  expect(refused).toHaveLength(11)
  expect(refused[0]?.body.error).toMatchObject({ code: 'tooMany' })
  expect(Number(refused[0]?.headers.get('retry-after'))).toBeGreaterThan(0)
  expect((await server.get('/api/documents/quickSheet')).status).toBe(200)
})

test('A server on the loopback address says that no phone can reach it', async () => {
  expect((await server.get('/api/reach')).body).toEqual({ onlyHere: true, addresses: [] })
})

test('A server on every address names those that phones can try', async () => {
  const { buildApp } = await import('../../src/app.ts')
  const app = await buildApp({ store: server.store })
  await app.listen({ port: 0, host: '0.0.0.0' })
  const { port } = app.server.address() as { port: number }
  const reach = await fetch(`http://127.0.0.1:${port}/api/reach`).then((response) => response.json())
  await app.close()
  const own = Object.values(networkInterfaces()).flatMap((entries) =>
    (entries ?? []).filter(({ family, internal }) => family === 'IPv4' && !internal),
  )
  expect(reach).toEqual({ onlyHere: false, addresses: own.map(({ address }) => `http://${address}:${port}`) })
})

test('Rounds are there after the server was started again', async () => {
  const code = await open()
  await give(code, 1, telling(1))
  const { openStore } = await import('../../src/store/index.ts')
  const again = await openStore(server.database.url)
  const workspace = again.workspace(await again.ensureWorkspace('default'))
  expect(await workspace.rounds.get(code)).toMatchObject({ count: 1, closedAt: null })
  expect(await workspace.rounds.guesses(code)).toBeNull()
  const other = again.workspace(await again.ensureWorkspace('other'))
  expect(await other.rounds.get(code)).toBeNull()
  expect(await other.rounds.give(code, device(1), telling(1))).toEqual({ refused: 'missing' })
  await again.close()
})
