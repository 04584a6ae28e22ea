import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import packageDescription from '../../package.json' with { type: 'json' }
import { onPostgresql } from '../engines.ts'
import { type Server, startServer } from './server.ts'

let server: Server
let web: string

beforeAll(async () => {
  web = await mkdtemp(join(tmpdir(), 'cyclewright-web-'))
  await mkdir(join(web, 'assets'))
  await writeFile(join(web, 'index.html'), '<!doctype html><title>The one page</title>')
  await writeFile(join(web, 'assets', 'main-1a2b3c.js'), 'export {}')
  server = await startServer({ webRoot: web })
})

afterAll(async () => {
  await server.close()
  await rm(web, { recursive: true })
})

test('Health tells the version and how the database keeps what it acknowledged', async () => {
  const { status, body } = await server.get('/health')
  expect(status).toBe(200)
  expect(body).toEqual({
    status: 'ok',
    version: packageDescription.version,
    database: onPostgresql()
      ? { engine: 'postgresql', journalMode: 'wal', synchronous: 'synchronous_commit on, fsync on' }
      : { engine: 'sqlite', journalMode: 'wal', synchronous: 'FULL' },
  })
})

describe('The web', () => {
  test.each(['/', '/designs', '/designs/tern/edit', '/a.b/c'])('opens its one page at %s', async (path) => {
    const { status, body, headers } = await server.get(path)
    expect(status).toBe(200)
    expect(body).toContain('The one page')
    expect(headers.get('cache-control')).toBe('no-cache')
  })

  test('is kept by the browser where its name changes with its content', async () => {
    const { headers } = await server.get('/assets/main-1a2b3c.js')
    expect(headers.get('cache-control')).toBe('public, max-age=31536000, immutable')
  })

  test.each(['/assets/gone.js', '/api/nothing', '/api', '/trpc/a/b', '/health/more'])(
    'does not answer for %s, which is no screen',
    async (path) => {
      const { status, body } = await server.get(path)
      expect(status).toBe(404)
      expect(body.error.code).toBe('notFound')
      expect(body.error.message).toContain(path)
    },
  )

  test('does not answer for what is outside its folder', async () => {
    const { status } = await server.get('/..%2f..%2fpackage.json')
    expect([403, 404]).toContain(status)
  })
})

test('A page may load from this server only', async () => {
  const { headers } = await server.get('/')
  const policy = headers.get('content-security-policy') ?? ''
  expect(policy).toContain("script-src 'self' 'wasm-unsafe-eval';")
  expect(policy).toContain("default-src 'self';")
  expect(policy).not.toContain('upgrade-insecure-requests')
  expect(policy).not.toContain("'unsafe-eval'")
  expect(headers.get('x-content-type-options')).toBe('nosniff')
})

describe('Writing from the page of another site is refused (ASVS 3.5.1)', () => {
  const body = { base: null, body: {} }
  const send = (headers: HeadersInit) => server.send('PUT', '/api/documents/game/any', body, headers)

  test.each([
    ['by what the browser says', { 'sec-fetch-site': 'cross-site' }],
    ['from a sister site as well', { 'sec-fetch-site': 'same-site' }],
    ['by the origin, where the browser says nothing', { origin: 'https://elsewhere.example' }],
    ['without an origin that can be read', { origin: 'null' }],
  ])('%s', async (_how, headers) => {
    const { status, body } = await send(headers as Record<string, string>)
    expect(status).toBe(403)
    expect(body.error.code).toBe('forbidden')
  })

  test.each([
    ['its own pages', { 'sec-fetch-site': 'same-origin' }],
    ['its own origin', 'own'],
    ['programs that are no browser', {}],
  ])('but not from %s', async (_who, headers) => {
    const { status } = await send(headers === 'own' ? { origin: server.url } : (headers as Record<string, string>))
    expect(status).toBe(400)
  })

  test('by tRPC too', async () => {
    const { status } = await server.send('POST', '/trpc/documents.remove', {}, { 'sec-fetch-site': 'cross-site' })
    expect(status).toBe(403)
  })
})

test('Reading is free, and nothing can be written by it (ASVS 3.5.3)', async () => {
  expect((await server.get('/api/documents/game', { 'sec-fetch-site': 'cross-site' })).status).toBe(200)
  const input = encodeURIComponent(JSON.stringify({ kind: 'game', id: 'any' }))
  const { status, body } = await server.get(`/trpc/documents.remove?input=${input}`)
  expect(status).toBe(400)
  expect(body.error.message).toContain('GET')
})
