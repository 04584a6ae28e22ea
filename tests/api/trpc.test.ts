import { createTRPCClient, httpBatchLink, TRPCClientError } from '@trpc/client'
import { afterAll, beforeAll, expect, test } from 'vitest'
import type { AppRouter } from '../../src/api/index.ts'
import type { Problem } from '../../src/model/errors.ts'
import { harbour, ternBest } from '../model/documents/harbour.ts'
import { type Server, startServer } from './server.ts'

let server: Server
let client: ReturnType<typeof createTRPCClient<AppRouter>>

beforeAll(async () => {
  server = await startServer()
  client = createTRPCClient<AppRouter>({ links: [httpBatchLink({ url: `${server.url}/trpc` })] })
})

afterAll(() => server.close())

async function failureOf(call: Promise<unknown>) {
  const error = await call.then(
    () => null,
    (reason: unknown) => reason,
  )
  if (!(error instanceof TRPCClientError)) throw new Error('the call did not fail as a procedure does')
  return { message: error.message, data: error.data }
}

test('The web saves, reads, and gets a conflict as a value that holds both sides', async () => {
  const save = { kind: 'game', id: 'harbour', name: 'Harbour', base: null } as const
  const first = await client.documents.save.mutate({ ...save, body: harbour() })
  expect(first).toMatchObject({ saved: { revision: 1 } })
  const found = await client.documents.get.query({ kind: 'game', id: 'harbour' })
  expect(found.body).toEqual(harbour())

  const name = 'His'
  const second = await client.documents.save.mutate({ ...save, name, body: { ...harbour(), name } })
  expect(second).toMatchObject({ conflict: { current: { revision: 1 }, base: null } })
})

test('Several questions travel in one request, and one that fails does not take the others with it', async () => {
  const [list, gone] = await Promise.all([
    client.documents.list.query({ kind: 'game' }),
    failureOf(client.documents.get.query({ kind: 'game', id: 'gone' })),
  ])
  expect(list).toHaveLength(1)
  expect(gone.data).toMatchObject({ httpStatus: 404, failure: { code: 'notFound', path: ['id'] } })
})

test('All problems of a document come at once, each with its path', async () => {
  const body = { ...harbour(), format: 2, name: '' }
  body.clock.teleop = -1
  const { message, data } = await failureOf(
    client.documents.save.mutate({ kind: 'game', id: 'harbour', base: 1, body }),
  )
  expect(message).toBe('format must be 1, the only one known here, got 2')
  expect(data?.failure.problems?.map(({ path }: Problem) => path.join('/'))).toEqual([
    'body/format',
    'body/name',
    'body/clock/teleop',
  ])
})

test('A computation answers the same as over plain HTTP', async () => {
  const { robot } = ternBest()
  const request = { game: harbour(), robot, from: 'left', to: 'slip.1' }
  const answer = await client.compute.travel.mutate(request)
  expect(answer).toEqual((await server.send('POST', '/api/compute/travel', request)).body)
})

test('A procedure that is not there, a broken body and deep nesting are answered, without a trace of the code', async () => {
  const unknown = await server.send('POST', '/trpc/documents.burn', {})
  expect(unknown.status).toBe(404)
  const broken = await server.raw('/trpc/documents.save', '{"kind":', { 'content-type': 'application/json' })
  expect(broken.status).toBe(400)
  expect(broken.body.error.message).toContain('not valid JSON')
  const deep = await server.raw('/trpc/documents.save', '['.repeat(100_000), { 'content-type': 'application/json' })
  expect(deep.status).toBe(400)
  for (const { body } of [unknown, broken, deep]) expect(JSON.stringify(body)).not.toMatch(/\.ts|stack|node_modules/)
})

test('What is wrong with a request itself carries its sentence’s name and parts, for a screen in another language', async () => {
  const asked = { kind: 'game', id: 'constructor', name: 'x'.repeat(201), base: 0, body: harbour() } as const
  const { data } = await failureOf(client.documents.save.mutate(asked))
  expect(data?.failure.problems?.map(({ path, said }: Problem) => [path.join('/'), said?.code])).toEqual([
    ['id', 'takenId'],
    ['name', 'characters'],
    ['base', 'outOfRange'],
  ])
  const guess = { low: 9, likely: 8, high: 'long' } as never
  const wrong = await failureOf(client.guesses.give.mutate({ code: 'zz', device: 'short', guess }))
  expect(wrong.data?.failure.problems?.map(({ said }: Problem) => said)).toEqual([
    { code: 'notACode', parts: { got: { text: '"zz"' } } },
    { code: 'notASecret', parts: {} },
    { code: 'wrongType', parts: { name: 'high', noun: 'a number', got: { text: '"long"' } } },
  ])
})
