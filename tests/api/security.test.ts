import { readFileSync } from 'node:fs'
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises'
import { request } from 'node:https'
import { type AddressInfo, connect } from 'node:net'
import { tmpdir } from 'node:os'
import { join as pathOf } from 'node:path'
import { connect as connectTls } from 'node:tls'
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest'
import { offered } from '../../src/api/http/endpoints.ts'
import { Pace } from '../../src/api/http/pace.ts'
import { Attempts } from '../../src/api/people/attempts.ts'
import { claimAddress } from '../../src/claiming.ts'
import { projectRoot } from '../../src/root.ts'
import { OwnSignals } from '../../src/store/signals.ts'
import { harbour } from '../model/documents/harbour.ts'
import { type Server, startServer } from './server.ts'
import { claim, cookieOf, join, type Member, memberOf, passphrase } from './team.ts'

/**
 * Items of OWASP's Application Security Verification Standard 5.0.0 (2025), in our own words, for what the server promises of sign-in. Those
 * that other files test bear their numbers there too; docs/security.md lists all of them.
 */
let server: Server
let lead: Member
let web: string

beforeAll(async () => {
  web = await mkdtemp(pathOf(tmpdir(), 'cyclewright-web-'))
  await mkdir(pathOf(web, 'assets'))
  await writeFile(pathOf(web, 'index.html'), '<!doctype html><title>The one page</title>')
  await writeFile(pathOf(web, 'assets', 'main-1a2b3c.js'), 'export {}')
  server = await startServer({ webRoot: web, pool: { threads: 1 } })
  lead = await claim(server)
})
afterAll(async () => {
  await server.close()
  await rm(web, { recursive: true })
})

/** One of each kind of answer: pages, scripts, data, refusals, what is not there, the log of numbers. */
const answers = () =>
  Promise.all([
    server.get('/'),
    server.get('/event/anything'),
    server.get('/assets/main-1a2b3c.js'),
    server.get('/health'),
    lead.get('/api/people'),
    server.get('/api/people'),
    lead.send('PUT', '/api/documents/game/harbour', { base: 'x' }),
    server.get('/api/nothing'),
    server.get('/trpc/people.list?input=%7B%7D'),
    server.get('/metrics'),
    server.get(`/api/documents/game/${'x'.repeat(400)}`),
  ])

const each = async (header: string) =>
  new Set((await answers()).map(({ headers, status }) => headers.get(header) ?? `nothing with ${status}`))

const secure = { 'x-forwarded-proto': 'https', host: 'pit.example' }
const inject = (url: string, headers: Record<string, string>) => server.app.inject({ method: 'GET', url, headers })

describe('Headers of every answer', () => {
  test('say for a year that only https is spoken, to whoever came by https and by a name of its own (ASVS 3.4.1)', async () => {
    for (const url of ['/', '/health', '/api/people', '/api/nothing'])
      expect((await inject(url, secure)).headers['strict-transport-security'], url).toBe('max-age=31536000')
    expect((await inject('/', { host: 'pit.example' })).headers).not.toHaveProperty('strict-transport-security')
    expect((await inject('/', { ...secure, host: 'localhost:3000' })).headers).not.toHaveProperty(
      'strict-transport-security',
    )
  })

  test('let no other site read anything (ASVS 3.4.2)', async () => {
    const asked = await inject('/api/people', { origin: 'https://elsewhere.example', cookie: lead.cookie })
    expect(asked.headers).not.toHaveProperty('access-control-allow-origin')
    const before = await server.app.inject({
      method: 'OPTIONS',
      url: '/api/people',
      headers: { origin: 'https://elsewhere.example', 'access-control-request-method': 'POST' },
    })
    expect([before.statusCode, before.headers['access-control-allow-origin']]).toEqual([403, undefined])
  })

  test('name where scripts, styles and all else may come from, without inline scripts, plug-ins or another base (ASVS 3.4.3)', async () => {
    const [policy, ...others] = await each('content-security-policy')
    expect(others).toEqual([])
    const of = Object.fromEntries(
      policy!.split(';').map((directive) => {
        const [name, ...values] = directive.trim().split(' ')
        return [name, values.join(' ')]
      }),
    )
    expect(of).toMatchObject({
      'default-src': "'self'",
      'script-src': "'self' 'wasm-unsafe-eval'",
      'object-src': "'none'",
      'base-uri': "'none'",
      'connect-src': "'self'",
      'form-action': "'self'",
    })
  })

  test('keep browsers from taking one kind of content for another (ASVS 3.4.4)', async () => {
    expect(await each('x-content-type-options')).toEqual(new Set(['nosniff']))
  })

  test('keep addresses, which name events and teams, from other sites (ASVS 3.4.5)', async () => {
    expect(await each('referrer-policy')).toEqual(new Set(['no-referrer']))
  })

  test('let no page show this one in a frame (ASVS 3.4.6)', async () => {
    for (const policy of await each('content-security-policy')) expect(policy).toMatch(/frame-ancestors 'none'/)
    expect(await each('x-frame-options')).toEqual(new Set(['DENY']))
  })

  test('keep windows and resources apart from other sites (ASVS 3.4.8, 3.5.8)', async () => {
    expect(await each('cross-origin-opener-policy')).toEqual(new Set(['same-origin']))
    expect(await each('cross-origin-resource-policy')).toEqual(new Set(['same-origin']))
  })

  test('leave a page the camera and staying awake, and nothing else of a device', async () => {
    const [policy, ...others] = await each('permissions-policy')
    expect(others).toEqual([])
    expect(policy).toMatch(/camera=\(self\), screen-wake-lock=\(self\)/)
    for (const name of ['microphone', 'geolocation', 'payment', 'usb']) expect(policy).toContain(`${name}=()`)
  })

  test('keep data out of every cache, and pages and scripts in the browser’s (ASVS 14.3.2)', async () => {
    const kept = (await answers()).map(({ headers }) => headers.get('cache-control'))
    expect(kept).toEqual([
      ...['no-cache', 'no-cache', 'public, max-age=31536000, immutable'],
      ...Array.from({ length: 8 }, () => 'no-store'),
    ])
  })

  test('name what an answer is, with its letters (ASVS 4.1.1)', async () => {
    const types = (await answers()).map(({ headers }) => headers.get('content-type'))
    // JSON has no other letters (RFC 8259, section 8.1), and its type no parameter for them (section 11).
    expect(types.filter((type) => !/charset=utf-8|^application\/json$/i.test(type ?? ''))).toEqual([])
  })
})

describe('Requests', () => {
  test('of one device are limited, and other devices of the same address go on (ASVS 2.4.1)', async () => {
    let now = Date.parse('2027-03-01T08:00:00Z')
    const small = await startServer({ mostRequests: 20, pool: { threads: 1 }, now: () => new Date(now) })
    onTestFinished(() => small.close())
    const own = await claim(small)
    const other = await join(small, own, { role: 'viewer', nickname: 'Kit' })
    const statuses = async (who: Member, count: number) =>
      (await Promise.all(Array.from({ length: count }, () => who.get('/api/session')))).map(({ status }) => status)
    expect((await statuses(own, 25)).filter((status) => status === 429).length).toBeGreaterThanOrEqual(5)
    const refused = await own.get('/trpc/people.list?input=%7B%7D')
    expect([refused.status, refused.body.error.code]).toEqual([429, 'tooMany'])
    expect(Number(refused.headers.get('retry-after'))).toBeGreaterThan(0)
    expect(await statuses(other, 15)).toEqual(Array.from({ length: 15 }, () => 200))
    // Nobody signed in is not the device's business, and health neither.
    expect((await small.get('/health', { cookie: own.cookie })).status).toBe(200)
    now += 60_000
    expect((await own.get('/api/session')).status).toBe(200)
  })

  test('are counted anew after a minute, and after a clock was set back', () => {
    let now = 1_000_000
    const pace = new Pace(2, () => now)
    expect([pace.count('a'), pace.count('a'), pace.count('a'), pace.count('b')]).toEqual([0, 0, 60, 0])
    now += 45_500
    expect(pace.count('a')).toBe(15)
    now += 14_500
    expect(pace.count('a')).toBe(0)
    now -= 500_000
    expect([pace.count('a'), pace.count('a'), pace.count('a')]).toEqual([0, 0, 60])
  })

  test('bring secrets in their body or in a cookie, never in an address; links have them behind the # (ASVS 14.2.1)', () => {
    const secret = /^(token|passphrase|current|key|closingKey)$/
    const inAddress = offered().flatMap(({ name, endpoint, procedure }) => {
      const [input] = (procedure._def as unknown as { inputs: { shape?: object }[] }).inputs
      const fields = Object.keys(input?.shape ?? {})
      const shown = endpoint.method === 'GET' || endpoint.method === 'DELETE' ? fields : []
      const inPath = [...endpoint.path.matchAll(/\{(\w+)\}/g)].map(([, field]) => field as string)
      return [...shown, ...inPath].filter((field) => secret.test(field)).map((field) => `${name}: ${field}`)
    })
    expect(inAddress).toEqual([])
    const link = new URL(claimAddress('https://pit.example', 'a-token'))
    expect([link.hash, link.search, link.pathname]).toEqual(['#a-token', '', '/claim'])
  })

  test('that are larger than anything needs are not read (ASVS 5.2.1)', async () => {
    const much = 'x'.repeat(2 * 1024 * 1024)
    const sent = await lead.send('PUT', '/api/documents/game/harbour', { base: null, body: much })
    expect([sent.status, sent.body.error.code]).toEqual([413, 'tooLarge'])
  })

  test('by other methods than those that are offered do nothing (ASVS 13.4.4, 4.1.4)', async () => {
    const { port } = server.app.server.address() as AddressInfo
    const first = (line: string) =>
      new Promise<string>((resolve, reject) => {
        const socket = connect(port, '127.0.0.1', () => socket.write(`${line} HTTP/1.1\r\nHost: localhost\r\n\r\n`))
        socket.once('data', (chunk) => {
          resolve(String(chunk).split('\r\n')[0]!)
          socket.destroy()
        })
        socket.once('close', () => resolve('closed'))
        socket.once('error', reject)
      })
    for (const line of ['TRACE /', 'PATCH /api/people', 'CONNECT pit.example:443'])
      expect(await first(line), line).toMatch(/^closed$|^HTTP\/1\.1 (400|403|404|405|501)/)
  })
})

test('What a proxy says of whom it forwards is believed of proxies that are named alone (ASVS 4.1.3)', async () => {
  const guess = (of: Server, from: string) =>
    of.app.inject({ method: 'GET', url: '/api/guess-rounds/AAAAAA', headers: { 'x-forwarded-for': from } })
  const statuses = async (of: Server) => {
    await claim(of)
    const codes = []
    for (const from of ['203.0.113.1', '203.0.113.2', '203.0.113.3']) codes.push((await guess(of, from)).statusCode)
    return codes
  }
  const alone = await startServer({ mostGuessRequests: 2, pool: { threads: 1 } })
  onTestFinished(() => alone.close())
  // Whoever makes up addresses is still one.
  expect(await statuses(alone)).toEqual([404, 404, 429])
  const behind = await startServer({ mostGuessRequests: 2, trustProxy: ['loopback'], pool: { threads: 1 } })
  onTestFinished(() => behind.close())
  expect(await statuses(behind)).toEqual([404, 404, 404])
})

describe('Signing in', () => {
  const signIn = (word: string, headers?: HeadersInit) =>
    server.send('POST', '/api/session', { nickname: 'Ada', passphrase: word, device: { name: 'Desk' } }, headers)

  test('has no account that is there beforehand: an empty server knows nobody (ASVS 6.3.2)', async () => {
    const empty = await startServer({ pool: { threads: 1 } })
    onTestFinished(() => empty.close())
    expect(await empty.database.sql('SELECT * FROM "Person"')).toEqual([])
    await claim(empty, { nickname: 'Wilma' })
    for (const nickname of ['admin', 'root', 'lead', 'Ada'])
      expect(
        (await empty.send('POST', '/api/session', { nickname, passphrase: 'admin', device: { name: 'Desk' } })).status,
      ).toBe(401)
  })

  test('takes a passphrase letter by letter, as long as one wants it (ASVS 6.2.8, 6.2.9)', async () => {
    const long = Array.from({ length: 40 }, (_, index) => `gull ${index * index}`)
      .join(', ')
      .slice(0, 180)
    expect(long.length).toBeGreaterThan(64)
    const changed = await lead.send('PUT', '/api/session/passphrase', { current: passphrase, passphrase: long })
    expect(changed.status).toBe(200)
    expect((await signIn(long.slice(0, 179))).status).toBe(401)
    expect((await signIn(long.toUpperCase())).status).toBe(401)
    expect((await signIn(long)).status).toBe(200)
    const back = await lead.send('PUT', '/api/session/passphrase', { current: long, passphrase })
    expect(back.status).toBe(200)
  })

  test('gives a token of 256 random bits, never the same (ASVS 7.2.3, 11.5.1)', async () => {
    const tokens = new Set<string>()
    for (let turn = 0; turn < 4; turn++) tokens.add(cookieOf(await signIn(passphrase)).split('=')[1]!)
    expect(tokens.size).toBe(4)
    for (const token of tokens) expect(Buffer.from(token, 'base64url').length).toBe(32)
  })

  test('gives a new token each time, and ends the one that was brought along (ASVS 7.2.4)', async () => {
    const first = memberOf(server, await signIn(passphrase))
    const second = memberOf(server, await signIn(passphrase, { cookie: first.cookie }))
    expect(second.cookie).not.toBe(first.cookie)
    expect([(await first.get('/api/people')).status, (await second.get('/api/people')).status]).toEqual([401, 200])
  })

  test('ends where one signs out: the token opens nothing afterwards (ASVS 7.4.1)', async () => {
    const member = memberOf(server, await signIn(passphrase))
    const out = await member.send('DELETE', '/api/session')
    expect(out.headers.getSetCookie()[0]).toMatch(/^cyclewright=; .*Expires=Thu, 01 Jan 1970/)
    expect((await member.get('/api/people')).status).toBe(401)
  })

  test('is written down, whether it works or not, with who and when (ASVS 16.3.1)', async () => {
    await signIn('not the right one')
    await signIn(passphrase)
    const [worked, refused] = (await lead.get('/api/audit?limit=2')).body
    expect(refused).toMatchObject({ action: 'session.refused', person: lead.id, at: expect.stringMatching(/Z$/) })
    expect(worked).toMatchObject({ action: 'session.signIn', person: lead.id, device: expect.any(String) })
  })

  test('is limited by account in all processes together: each hears of the others’ attempts (ASVS 6.3.1)', () => {
    const signals = new OwnSignals()
    const [one, other] = [new Attempts(() => 0, signals), new Attempts(() => 0, signals)]
    const tries = [one, other, one, other, one].map((process) => process.begin('default/ada'))
    expect([...tries, other.begin('default/ada'), one.begin('default/ada')]).toEqual([0, 0, 0, 0, 0, 1, 1])
    expect(other.begin('default/kit')).toBe(0)
    one.succeeded('default/ada')
    expect(other.begin('default/ada')).toBe(0)
  })
})

test('What goes wrong inside is told without anything of the inside (ASVS 16.5.1)', async () => {
  const lines: string[] = []
  const broken = await startServer({
    pool: { threads: 1 },
    logLevel: 'error',
    logTo: { write: (line) => void lines.push(line) },
  })
  onTestFinished(() => broken.close())
  await broken.send('PUT', '/api/documents/game/harbour', { base: null, body: harbour() })
  await broken.database.sql(`ALTER TABLE "Revision" RENAME TO "Elsewhere"`)
  const { status, body } = await broken.get('/api/documents/game/harbour')
  await broken.database.sql(`ALTER TABLE "Elsewhere" RENAME TO "Revision"`)
  expect([status, body]).toEqual([
    500,
    { error: { code: 'internal', message: expect.stringMatching(/^Something went wrong in the server/) } },
  ])
  expect(lines.join('')).toMatch(/Revision/)
})

describe('Over TLS', () => {
  const read = (name: string) => readFileSync(pathOf(projectRoot(), 'tests', 'api', 'tls', name))
  const cert = read('certificate.pem')
  let port: number
  beforeAll(async () => {
    const own = await startServer({ https: { cert, key: read('key.pem') }, pool: { threads: 1 } })
    port = (own.app.server.address() as AddressInfo).port
    return () => own.close()
  })

  test('the certificate and key that are named are used, and cookies are for https alone (ASVS 3.3.1, 12.2.1)', async () => {
    const answer = await new Promise<{ status: number; text: string; hsts: unknown }>((resolve, reject) => {
      request({ port, host: '127.0.0.1', servername: 'pit.example', path: '/health', ca: cert }, (response) => {
        let text = ''
        response.on('data', (chunk) => {
          text += chunk
        })
        const { statusCode = 0, headers } = response
        const hsts = headers['strict-transport-security']
        response.on('end', () => resolve({ status: statusCode, text, hsts }))
      })
        .once('error', reject)
        .end()
    })
    expect([answer.status, JSON.parse(answer.text).status]).toEqual([200, 'ok'])
  })

  test('versions before 1.2 are refused, and 1.3 is taken where both know it (ASVS 12.1.1)', async () => {
    const agreed = (options: object) =>
      new Promise<string | null>((resolve, reject) => {
        const socket = connectTls({ port, host: '127.0.0.1', ca: cert, ...options }, () => {
          resolve(socket.getProtocol())
          socket.destroy()
        })
        socket.once('error', reject)
      })
    expect(await agreed({})).toBe('TLSv1.3')
    expect(await agreed({ maxVersion: 'TLSv1.2' })).toBe('TLSv1.2')
    await expect(agreed({ minVersion: 'TLSv1', maxVersion: 'TLSv1.1', ciphers: 'DEFAULT@SECLEVEL=0' })).rejects.toThrow(
      /alert|version|handshake/i,
    )
  })
})
