import { afterAll, beforeAll, expect, test } from 'vitest'
import { eventId, seen } from '../faults/harbourEvent.ts'
import { openEvent } from '../faults/openEvent.ts'
import { type Server, startServer } from './server.ts'

let server: Server

beforeAll(async () => {
  server = await startServer()
  await openEvent(server.url)
})
afterAll(() => server.close())

/** Large enough to be read by a thread. */
const batchOf = (device: number, rows = 60) => ({
  device: `phone-${device}`,
  unsent: 0,
  rows: Array.from({ length: rows }, (_, index) => seen(device, index)) as unknown[],
})

const send = (body: unknown) => server.send('POST', '/api/records', body)
const outcomes = ({ body }: Awaited<ReturnType<typeof send>>) =>
  body.answers.map(({ outcome, again }: { outcome: string; again?: boolean }) => `${outcome} ${again}`)

test('a large batch that is sent again as it was is looked up, not taken for granted', async () => {
  const batch = batchOf(1)
  expect(outcomes(await send(batch))).toEqual(Array(60).fill('held false'))
  const again = await send(batch)
  expect(outcomes(again)).toEqual(Array(60).fill('held true'))
  expect(again.body.receipt.held).toBe(60)

  // As if an older copy of the database had been put in place.
  await server.database.sql(`DELETE FROM "FieldRecord" WHERE "sequence" >= 30`)
  expect(outcomes(await send(batch))).toEqual([...Array(30).fill('held true'), ...Array(30).fill('held false')])
  const { records } = (await server.get(`/api/records?event=${eventId}`)).body
  expect(records.map(({ row }: { row: unknown }) => row)).toEqual(batch.rows)
})

test('a row in it that can not be read is refused each time, and the others are held', async () => {
  const batch = batchOf(2)
  batch.rows[7] = { ...(batch.rows[7] as object), kind: 'rumour' }
  for (const again of [false, true]) {
    const answers = outcomes(await send(batch))
    expect(answers[7]).toBe('refused undefined')
    expect(answers.filter((answer: string) => answer === `held ${again}`)).toHaveLength(59)
  }
})

test('what is no JSON, too deep or no batch is refused as everywhere, however large it is', async () => {
  const text = JSON.stringify(batchOf(3))
  const json = { 'content-type': 'application/json' }
  const raw = (body: string) => server.raw('/api/records', body, json)
  expect((await raw(text.slice(0, -2))).body.error.message).toMatch(/^The body is not valid JSON/)
  expect(
    (await raw(text.replace('"unsent":0', `"unsent":${'['.repeat(60)}${']'.repeat(60)}`))).body.error,
  ).toMatchObject({ code: 'malformed', message: expect.stringContaining('levels deep') })
  expect((await raw(text.replace('"unsent":0', '"unsent":-1'))).body.error).toMatchObject({ path: ['unsent'] })
  expect((await raw(text.replace('"rows":', '"lines":'))).status).toBe(400)
  expect((await raw('')).status).toBe(400)
  expect((await send({ ...batchOf(3, 201) })).body.error).toMatchObject({ code: 'malformed', path: ['rows'] })
  expect((await server.raw('/api/records', text, { 'content-type': 'text/plain' })).status).toBe(415)
  const { records } = (await server.get(`/api/records?event=${eventId}`)).body
  expect(records.filter(({ row }: { row: { device: string } }) => row.device === 'phone-3')).toEqual([])
})
