import { afterAll, beforeAll, expect, test } from 'vitest'
import { eventId, qualification, seen, uuidOf } from '../faults/harbourEvent.ts'
import { openEvent } from '../faults/openEvent.ts'
import { type Server, startServer } from './server.ts'

// Files of this size are read and written by a thread (src/api/exchange/files.ts), smaller ones where they arrive.

let source: Server
const pool = { threads: 1 }
const json = { 'content-type': 'application/json' }
const at = (path: string) => `/api/events/${eventId}/${path}`

beforeAll(async () => {
  source = await startServer({ pool })
  await openEvent(source.url)
  const { mark } = (await source.get(at('matches'))).body
  await source.send('PUT', at('matches'), { matches: [qualification(1)], mark })
  const way = { event: eventId, device: 'phone-1', scout: 'scout-1', made: '2026-11-27T10:00:00.000Z' }
  const photo = uuidOf(1, 90)
  const data = Buffer.alloc(30_000, 'abcdef').toString('base64')
  const rows = [
    ...Array.from({ length: 70 }, (_, sequence) => seen(1, sequence, { match: 'q1', note: '=1+1 “odd”' })),
    { ...way, id: photo, sequence: 90, kind: 'photo', body: { id: photo, type: 'image/png', data } },
  ]
  const { body } = await source.send('POST', '/api/records', { device: 'phone-1', unsent: 0, rows })
  expect(body.receipt.held).toBe(71)
})
afterAll(() => source.close())

test('a large archive and large tables come out and are known again, and what is wrong in one is told as ever', async () => {
  const bring = (text: string) => source.raw('/api/events/archive', text, json)
  const text = JSON.stringify((await source.get(at('archive'))).body)
  expect(text.length).toBeGreaterThan(100_000)
  const damaged = await bring(text.replace('=1+1', '=1+2'))
  expect(damaged.status).toBe(400)
  expect(damaged.body.error).toMatchObject({ code: 'malformed', path: ['hash'] })
  const broken = await bring(text.slice(0, -2))
  expect(broken.body.error).toMatchObject({ code: 'malformed', message: expect.stringMatching(/is not valid JSON/) })
  const known = { part: 'records', added: 0, already: 71 }
  expect((await bring(text)).body).toMatchObject({ conflicts: [], parts: expect.arrayContaining([known]) })

  const zip = await fetch(source.url + at('tables')).then((answer) => answer.arrayBuffer())
  const tables = await source.raw('/api/events/tables', zip, { 'content-type': 'application/zip' })
  expect(tables.body).toMatchObject({ conflicts: [], parts: expect.arrayContaining([known]) })
})
