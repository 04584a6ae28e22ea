import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js'
import fc from 'fast-check'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openApiDocument } from '../../src/api/http/openapi.ts'
import { inLongForm } from '../browser/longForm.ts'
import { eventId, qualification, seen, teams } from '../faults/harbourEvent.ts'
import { openEvent } from '../faults/openEvent.ts'
import { type Known, type Sampler, type Schema, sampler } from './fromSchema.ts'
import { bodies, files, oddTexts } from './mutations.ts'
import { type Server, startServer } from './server.ts'
import { claim, join, type Member, passphrase } from './team.ts'

interface Parameter {
  name: string
  in: 'path' | 'query' | 'header'
  schema: Schema
}

interface Operation {
  operationId: string
  parameters?: Parameter[]
  requestBody?: { content: { [type: string]: { schema: Schema } } }
  responses: { [status: string]: { content?: { [type: string]: { schema: Schema } } } }
}

interface Offered extends Operation {
  method: string
  path: string
}

interface Description {
  paths: { [path: string]: { [method: string]: Operation } }
  components: { schemas: { [name: string]: Schema } }
}

/** Generated from the router, so that a new address is tried without a word here. */
const description = JSON.parse(JSON.stringify(openApiDocument('0'))) as Description
const { schemas } = description.components
const all: Offered[] = Object.entries(description.paths).flatMap(([path, of]) =>
  Object.entries(of).map(([method, operation]) => ({ ...operation, method: method.toUpperCase(), path })),
)

// Formats beside patterns are not looked at: that can only miss a refusal.
const ajv = new Ajv2020({ strict: false, validateFormats: false, logger: false })
ajv.addSchema({ $id: 'api', components: { schemas } })
const checks = new Map<string, ValidateFunction>()
function checkOf(name: string, schema: Schema): ValidateFunction {
  const known = checks.get(name)
  if (known) return known
  const text = JSON.stringify(schema).replaceAll('"#/components', '"api#/components')
  const made = ajv.compile(JSON.parse(text))
  checks.set(name, made)
  return made
}

let server: Server
let lead: Member
/** A lead who may lose the session, the role and the devices. */
let zoe: Member
let known: Known
/** The tables of the event as the server sends them: what a file that is brought is made from. */
let tables: Uint8Array

beforeAll(async () => {
  server = await startServer({ pool: { threads: 1 }, mostGuessRequests: 1e6 })
  await openEvent(server.url)
  lead = await claim(server)
  zoe = await join(server, lead, { role: 'lead', nickname: 'Zoe' })
  // Zoe may be deleted, by the nickname; somebody is left then.
  const yan = await join(server, lead, { role: 'scout', nickname: 'Yan' })
  const address = `/api/events/${eventId}/matches`
  const { mark } = (await lead.get(address)).body
  await lead.send('PUT', address, { mark, matches: [1, 2, 3].map(qualification) })
  const rows = [1, 2].map((sequence) => seen(1, sequence, { match: 'q1' }))
  await lead.send('POST', '/api/records', { device: 'phone-1', unsent: 0, rows })
  const records = rows.map(({ id }) => id)
  const moments = ['2026-11-27T10:00:00.000Z', '2026-11-27', '2026-11-27T10:00:00+01:00']
  const any = [eventId, 'harbour', 'pier', '1', 'AAAAAA', 'abcdefghijklmnopqrstuvwx', 'AAAA', passphrase, ...moments]
  const six = teams.slice(0, 6)
  const sent = await fetch(`${server.url}/api/events/${eventId}/tables`, { headers: { cookie: lead.cookie } })
  tables = new Uint8Array(await sent.arrayBuffer())
  const schedule = (await lead.get(address)).body
  const seats = (await lead.get(`/api/events/${eventId}/assignments`)).body
  const matches = ['q1', 'q2', 'q3']
  known = {
    any,
    named: {
      event: [eventId],
      kind: ['game'],
      id: ['harbour', 'q1', ...records],
      mark: [schedule.mark, seats.mark],
      match: matches,
      team: six,
      order: six,
      game: ['harbour'],
      goal: ['pier', 'mast'],
      source: ['slip'],
      record: records,
      records,
      replaces: records,
      person: [zoe.id, yan.id],
      people: [zoe.id, yan.id],
      scout: ['scout-1'],
      device: [zoe.device, yan.device],
      nickname: ['Zoe', 'Max'],
      sheet: ['sheet'],
    },
  }
})
afterAll(() => {
  // After a stream that was left, fetch holds a connection ready that nothing was asked on: a server waits for such a minute.
  server.app.server.closeAllConnections()
  return server.close()
})

/** In the normal form as many as take some seconds in all; FUZZ=200 tries more. */
const runs = Number(process.env['FUZZ'] ?? (inLongForm ? 60 : 5))
const seed = Number(process.env['FUZZ_SEED'] ?? 11)

/** The address with values, most of which fit, and now and then what nobody would put there. */
function addressOf({ path, parameters = [] }: Offered, sample: Sampler): string {
  const given = (schema: Schema, name: string) => {
    const odd = ['..', '%', '%00', 'a/b', '-1', 'null', '{}', 'x'.repeat(400), ...oddTexts.slice(1)]
    return sample.pick([0, 1, 2, 3, 4, 5]) === 0 ? sample.pick(odd) : String(sample.value(schema, name))
  }
  const filled = path.replaceAll(/\{(\w+)\}/g, (_, name) => {
    const { schema = {} } = parameters.find((each) => each.in === 'path' && each.name === name) ?? {}
    return encodeURIComponent(given(schema, name))
  })
  const query = parameters
    .filter((each) => each.in === 'query' && sample.pick([0, 1, 2]) > 0)
    .map(({ name, schema }) => `${name}=${encodeURIComponent(given(schema, name))}`)
  const strange = ['colour=red', '__proto__=1', 'a[]=1', '%E0%A4%A', query[0] ?? '']
  const further = sample.pick([0, 1, 2, 3]) === 0 ? sample.pick(strange) : ''
  const whole = [...query, ...(further === '' ? [] : [further])].join('&')
  return whole === '' ? filled : `${filled}?${whole}`
}

/** Rows are read one by one, and a document that is only checked is told what is wrong with it: both are answered with 200. */
const readByRow = 'records.accept'
const onlyChecked = 'documents.check'

const json = 'application/json'

/** What an address takes; a file that is no JSON has no schema. */
function takenBy({ requestBody }: Operation): { type: string; schema: Schema | undefined } | null {
  const [only] = Object.entries(requestBody?.content ?? {})
  return only ? { type: only[0], schema: only[0] === json ? only[1].schema : undefined } : null
}

function refusedBySchema(each: Offered, body: unknown): boolean {
  const { operationId } = each
  const schema = takenBy(each)?.schema
  if (!schema || operationId === onlyChecked) return false
  const whole = operationId === readByRow ? { ...schema, properties: { ...schema.properties, rows: {} } } : schema
  return !checkOf(operationId, whole)(body)
}

async function tried(each: Offered, address: string, body: unknown): Promise<number> {
  const { operationId, method, responses } = each
  const who = ['session.signOut', 'session.changePassphrase'].includes(operationId) ? zoe : lead
  const takes = takenBy(each)
  const stop = new AbortController()
  const response = await fetch(server.url + address, {
    method,
    signal: stop.signal,
    headers: { cookie: who.cookie, ...(takes && { 'content-type': takes.type }) },
    ...(takes && { body: takes.schema ? JSON.stringify(body) : Buffer.from(body as Uint8Array) }),
  })
  const { status, headers } = response
  const told = `${method} ${address} ${JSON.stringify(body)?.slice(0, 1500)}`
  // Of an address itself: it can not be read, or is none any more by what stands in it.
  const allowed = [...Object.keys(responses), '400', '404'].filter((each) => each !== '500')
  expect(allowed, told).toContain(String(status))
  if (headers.get('content-type')?.startsWith('text/event-stream')) {
    stop.abort()
    return status
  }
  const type = headers.get('content-type')?.split(';')[0] ?? ''
  if (status === 200) expect(Object.keys(responses['200']?.content ?? {}), told).toContain(type)
  if (status === 200 && type !== json) {
    expect((await response.arrayBuffer()).byteLength).toBeGreaterThan(0)
    return status
  }
  const answer = status === 204 ? null : await response.json()
  if (status !== 200) {
    expect(answer?.error?.message?.length, told).toBeGreaterThan(10)
    return status
  }
  expect(refusedBySchema(each, body), `taken, though its schema refuses it: ${told}`).toBe(false)
  const { schema } = responses['200']!.content![json]!
  const right = checkOf(`${operationId} answer`, schema)
  expect(right(answer), `${told}: ${JSON.stringify(right.errors)} ${JSON.stringify(answer).slice(0, 1500)}`).toBe(true)
  if (operationId === readByRow) {
    const rowCheck = checkOf('Row', { $ref: '#/components/schemas/Row' })
    const rows = (body as { rows: unknown[] }).rows
    for (const [index, row] of rows.entries())
      if (!rowCheck(row)) expect(answer.answers[index].outcome, JSON.stringify(row)).toBe('refused')
  }
  return status
}

const statuses = new Map<string, number[]>()

test.each(all.map((each) => [each.operationId, each] as const))('%s', { timeout: 600_000 }, async (name, each) => {
  const seenHere = new Set<number>()
  const request = fc.integer({ min: 1, max: 2 ** 31 - 1 }).chain((from) => {
    const sample = sampler(from, { schemas, known })
    const address = addressOf(each, sample)
    const takes = takenBy(each)
    const body = takes?.schema && (sample.value(takes.schema) as object)
    const changed = body ? fc.oneof(fc.constant(body), bodies(body)) : takes ? files(tables) : fc.constant(undefined)
    return fc.record({ address: fc.constant(address), body: changed as fc.Arbitrary<unknown> })
  })
  await fc.assert(
    fc.asyncProperty(request, async ({ address, body }) => {
      seenHere.add(await tried(each, address, body))
    }),
    { numRuns: runs, seed },
  )
  statuses.set(name, [...seenHere])
})

test('of what was tried, much was taken and much refused, and the one who asked is still signed in', async () => {
  const taken = [...statuses].filter(([, seen]) => seen.includes(200)).map(([name]) => name)
  const refused = [...statuses].filter(([, seen]) => seen.some((status) => status >= 400)).map(([name]) => name)
  expect(statuses.size).toBe(all.length)
  // Whole designs whose parts fit each other come out of no schema: what is computed is tried in fuzz.test.ts.
  const simple = all.filter(({ operationId }) => !operationId.startsWith('compute.'))
  expect(taken.length).toBeGreaterThan(simple.length / 2)
  expect(refused.length).toBeGreaterThan(all.length / 2)
  expect((await lead.get('/api/session')).body).toMatchObject({ person: { id: lead.id } })
})
