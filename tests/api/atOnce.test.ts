import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { LastMade } from '../../src/api/estimates/atOnce.ts'
import { type Known, knownOf } from '../../src/api/records/known.ts'
import { onlyWorkspace } from '../../src/app.ts'
import type { LiveNews } from '../../src/live/index.ts'
import type { Match } from '../../src/model/scouting/index.ts'
import { inLongForm } from '../browser/longForm.ts'
import { event, eventId, qualification, seen, teams } from '../faults/harbourEvent.ts'
import { openEvent } from '../faults/openEvent.ts'
import { type Server, startServer } from './server.ts'

const at = (what: string) => `/api/events/${eventId}/${what}`
let server: Server

/** As few robots as can play: each costs a tenth of a second. */
const six = teams.slice(0, 6)
const played = (number: number): Match => ({ ...qualification(1), id: `q${number}`, number })

beforeAll(async () => {
  server = await startServer()
  await openEvent(server.url)
  const matches = [1, 2, 3].map(played)
  const { mark } = (await server.get(at('matches'))).body
  await server.send('PUT', at('matches'), { matches, mark })
  const level = { ...event, level: 'local', teams: six.map((team) => ({ team })) }
  expect((await server.send('PUT', `/api/documents/event/${eventId}`, { base: 1, body: level })).status).toBe(200)
})
afterAll(() => server.close())

let phone = 0

/** What a phone saw of six robots in the first match. */
async function send(): Promise<void> {
  phone++
  const rows = six.map((team, n) => seen(phone, n, { match: 'q1', team }))
  const answer = await server.send('POST', '/api/records', { device: `phone-${phone}`, unsent: 0, rows })
  expect(answer.status).toBe(200)
}

/** Asks at once until nothing is lacking any more. */
async function settled(path: string) {
  for (;;) {
    const { body } = await server.get(`${path}?kept=true`)
    if (body.behind === null) return body
    await new Promise((resolve) => setTimeout(resolve, 100))
  }
}

const timeless = ({ madeAt: _, ...rest }: { madeAt: string; [other: string]: unknown }) => rest

/** The same question to a server that has worked nothing out yet. */
async function elsewhere(path: string) {
  const other = await startServer({ on: server.database })
  try {
    return (await other.get(path)).body
  } finally {
    await other.close()
  }
}

async function followed(path: string): Promise<void> {
  await send()
  const first = (await server.get(`${path}?kept=true`)).body
  // Nothing was made before: it is made of all that is known.
  expect(first).toMatchObject({ records: 6 * phone, behind: null })
  await send()
  const kept = (await server.get(`${path}?kept=true`)).body
  expect(kept).toEqual({ ...first, behind: { records: 6, other: false } })
  await send()
  expect((await server.get(`${path}?kept=true`)).body).toEqual({ ...first, behind: { records: 12, other: false } })
  // Whoever wants to know it exactly waits for it.
  const exact = (await server.get(path)).body
  expect(exact).toMatchObject({ records: 6 * phone, behind: null })
  expect(exact.from).not.toBe(first.from)
  // And what is made beside is the same, here and where it is made from nothing.
  const renewed = await settled(path)
  expect(timeless(renewed)).toEqual(timeless(exact))
  expect(renewed.madeAt > first.madeAt).toBe(true)
  if (inLongForm) expect(timeless(await elsewhere(path))).toEqual(timeless(exact))
}

test('A pack is answered at once as it was made last, says what came in since, and is made anew beside', async () => {
  await followed(at('pack'))
  const before = await settled(at('pack'))
  // What does not follow from records is as it is now.
  const side = (total: number) => ({ points: { total }, bonuses: [] })
  const result = { match: 'q1', red: side(30), blue: side(20) }
  const results = [{ match: 'q1', base: 0, matchRevision: 1, result }]
  expect((await server.send('PUT', at('results'), { results })).status).toBe(200)
  // Nor is who has the one before told that it is still the same.
  const told = (await server.get(`${at('pack')}?kept=true&since=${before.mark}`)).body
  expect(told).toMatchObject({ behind: { records: 0, other: true }, from: before.from, results: [result] })
  await settled(at('pack'))
  // Of another schedule nothing that was made before is said.
  const { mark } = (await server.get(at('matches'))).body
  await server.send('PUT', at('matches'), { matches: [played(4)], mark })
  const moved = (await server.get(`${at('pack')}?kept=true`)).body
  expect([moved.behind, moved.matches.length]).toEqual([null, 4])
})

describe.runIf(inLongForm)('in the long form', () => {
  test('and so is a briefing', () => followed(at('matches/q2/briefing')), 120_000)
})

test('Of an event one answer is made anew at a time, from what is known then; one that fails is not shown any longer', async () => {
  const workspace = server.store.workspace(await server.store.ensureWorkspace(onlyWorkspace))
  const last = new LastMade<string>()
  const failures: unknown[] = []
  const hears = new Set<(news: LiveNews) => void>()
  const hear = (heard: (news: LiveNews) => void) => {
    hears.add(heard)
    return () => hears.delete(heard)
  }
  const ctx = { workspace, hear, log: (error: unknown) => void failures.push(error) }
  let [running, most, made] = [0, 0, 0]
  const makes =
    (key: string, fails = false) =>
    async () => {
      if (fails) throw new Error('It can not be made')
      running++
      most = Math.max(most, running)
      // While it goes on, everybody asks.
      await Promise.all([take('a'), take('b'), take('a')])
      await new Promise((resolve) => setTimeout(resolve, 50))
      const { log, known } = await knownOf({ workspace }, eventId)
      last.keep(log, { key, known, of: `${key}${known.at.newest}` })
      running--
      made++
    }
  const take = (key: string, fails = false) => last.take(ctx, { event: eventId, key, make: makes(key, fails) })
  const calm = async () => {
    for (let before = -1; before !== made || running > 0; ) {
      before = made
      await new Promise((resolve) => setTimeout(resolve, 900))
    }
  }
  expect(await take('a')).toBeNull()
  const { log, known } = await knownOf({ workspace }, eventId)
  for (const key of ['a', 'b']) last.keep(log, { key, known, of: 'old' })
  expect(await take('a')).toMatchObject({ of: 'old', behind: null })
  await send()
  expect(await take('a')).toMatchObject({ of: 'old', behind: { records: 6, other: false } })
  // Phones come back, one after the other: it is waited for them.
  for (let k = 0; k < 4; k++) {
    await new Promise((resolve) => setTimeout(resolve, 250))
    for (const heard of hears) heard({ event: eventId, what: 'records' })
    expect(made).toBe(0)
  }
  await send()
  await calm()
  const { known: now } = await knownOf({ workspace }, eventId)
  for (const key of ['a', 'b']) expect(await take(key)).toMatchObject({ of: `${key}${now.at.newest}`, behind: null })
  expect([most, hears.size]).toEqual([1, 0])
  // One that knew less does not take its place.
  const less = { ...known, at: { ...known.at, newest: now.at.newest - 1 } } satisfies Known
  last.keep(log, { key: 'a', known: less, of: 'less' })
  expect(await take('a')).toMatchObject({ of: `a${now.at.newest}` })

  await send()
  expect(await take('b', true)).toMatchObject({ behind: { records: 6 } })
  await calm()
  expect(failures.map(String)).toEqual(['Error: It can not be made'])
  expect(await take('b')).toBeNull()
})
