import { afterAll, beforeAll, expect, test } from 'vitest'
import { eventsOf, type Sent } from '../api/events.ts'
import { type Server, startServer } from '../api/server.ts'
import { claimToken, cookieOf, passphrase } from '../api/team.ts'
import { postgresqlDatabase, type TestDatabase } from '../engines.ts'
import { event, eventId, seen } from '../faults/harbourEvent.ts'
import { openEvent } from '../faults/openEvent.ts'

let database: TestDatabase
/** Two servers side by side on one database; they know each other by it alone. */
let here: Server
let there: Server

beforeAll(async () => {
  database = await postgresqlDatabase()
  here = await startServer({ on: database, pool: { threads: 1 } })
  there = await startServer({ on: database, pool: { threads: 1 } })
  await openEvent(here.url)
})

afterAll(async () => {
  await Promise.all([here.close(), there.close()])
  await database.remove()
})

const syncOf = (device: number) => ({
  device: `phone-${device}`,
  unsent: 0,
  rows: [0, 1, 2].map((sequence) => seen(device, sequence)),
})

/** News of an event as a browser hears it, until the test stops listening. */
async function listening(server: Server, cookie?: string) {
  const stop = new AbortController()
  const answer = await fetch(`${server.url}/api/events/${eventId}/live`, {
    signal: stop.signal,
    ...(cookie && { headers: { cookie } }),
  })
  const heard: Sent[] = []
  const over = (async () => {
    for await (const sent of eventsOf(answer)) heard.push(sent)
  })().catch(() => {})
  return { answer, heard, over, stop: () => stop.abort() }
}

test('What one server acknowledges the other shows and tells of, and who sends to both sends once', async () => {
  const { heard, stop } = await listening(there)
  const sent = await here.send('POST', '/api/records', syncOf(1))
  expect(sent.status).toBe(200)
  const shown = (await there.get(`/api/records?event=${eventId}`)).body.records
  expect(shown.map(({ row }: { row: { id: string } }) => row.id)).toEqual(syncOf(1).rows.map(({ id }) => id))
  await expect.poll(() => heard.map(({ event: what }) => what), { interval: 5 }).toContain('records')
  const again = await there.send('POST', '/api/records', syncOf(1))
  expect(again.body.answers.map((row: { again: boolean }) => row.again)).toEqual([true, true, true])
  // A document too: the second to save is told so, at whichever server.
  const change = (server: Server, name: string) =>
    server.send('PUT', `/api/documents/event/${eventId}`, { base: 1, body: { ...event, name } })
  const statuses = await Promise.all([change(here, 'One'), change(there, 'Other')])
  expect(statuses.map(({ status }) => status).sort()).toEqual([200, 409])
  stop()
})

test('When one gets its first lead both belong to that team, and who is put out is out at both', async () => {
  expect((await there.get('/api/jobs')).status).toBe(200)
  const body = { token: await claimToken(here), nickname: 'Ada', passphrase, device: { name: 'Laptop' } }
  const claimed = await here.send('POST', '/api/session/claim', body)
  expect(claimed.status).toBe(200)
  // At once: there nobody is let in any more who does not sign in.
  expect((await there.get('/api/jobs')).status).toBe(401)
  const cookie = cookieOf(claimed)
  expect((await there.get('/api/jobs', { cookie })).status).toBe(200)
  const stream = await listening(there, cookie)
  expect((await here.bare('DELETE', `/api/devices/${claimed.body.device.id}`, { cookie })).status).toBe(200)
  // The stream ends by the news itself, long before its next heartbeat.
  await stream.over
  expect((await there.get('/api/jobs', { cookie })).status).toBe(401)
})
