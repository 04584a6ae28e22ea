import { execFileSync } from 'node:child_process'
import { type IncomingMessage, request } from 'node:http'
import { buffer } from 'node:stream/consumers'
import { gunzipSync } from 'node:zlib'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { ownTeam } from '../../seed/event/index.ts'
import { seededEvent } from '../../seed/index.ts'
import { option as optionContract } from '../../src/api/contracts/index.ts'
import { type EventPack, packAnswer } from '../../src/api/pack/contracts.ts'
import { ownTeams } from '../../src/api/pack/own.ts'
import type { Known } from '../../src/api/records/known.ts'
import { onlyWorkspace } from '../../src/app.ts'
import type { PlanBody } from '../../src/model/briefing/index.ts'
import { simulate } from '../../src/model/match/index.ts'
import { seedIfEmpty } from '../../src/seeding.ts'
import { type Server, startServer } from './server.ts'

const { event, matches, results } = seededEvent()
const address = `/api/events/${event.id}/pack`
let server: Server

beforeAll(async () => {
  server = await startServer()
  await seedIfEmpty(server.store, onlyWorkspace)
})
afterAll(() => server.close())

test('A pack holds what briefs and picks without a connection, small enough for a phone', async () => {
  // As the browser gets it, before it is unpacked.
  const { body: answer, headers } = await server.get(address)
  const pack: EventPack = answer
  expect(packAnswer.parse(pack)).toEqual(pack)
  expect(headers.get('content-encoding')).toBe('gzip')
  // 24 teams; 60 are 210 kB, some seconds on a bad connection.
  expect(Number(headers.get('content-length'))).toBeLessThan(100_000)
  expect(pack.own).toEqual([ownTeam])
  expect([pack.matches.length, pack.results.length]).toEqual([matches.length, results.length])
  expect(Object.keys(pack.robots)).toEqual(event.teams.map(({ team }) => team))
  expect(pack.ranking.rows[0]!.rank).toBe(1)
  expect(pack.calls[0]!.called).toBeGreaterThan(0)

  // Rounded robots are still robots: what they play is what the server's forecast says of the same match.
  for (const robot of Object.values(pack.robots)) expect(optionContract.safeParse(robot).success).toBe(true)
  const over = new Set(results.map(({ match }) => match))
  const { id, red, blue } = pack.matches.find((match) => !over.has(match.id))!
  const side = (of: typeof red) => of.map(({ team }) => pack.robots[team]!)
  const request = {
    game: pack.game,
    level: event.level,
    ours: side(red),
    theirs: side(blue),
    replicates: 4000,
    seed: 1,
  }
  const here = simulate(request)
  const { report } = (await server.get(`/api/events/${event.id}/matches/${id}/forecast`)).body
  // Every second draw of the same luck: both means lie within some standard errors of one run.
  for (const who of ['ours', 'theirs'] as const) {
    const { mean, standardError } = report.score[who]
    expect(Math.abs(here.score[who].mean - mean)).toBeLessThan(5 * standardError)
  }
  // Nothing new: only the mark comes, until something changes.
  const again = await server.get(`${address}?since=${pack.mark}`)
  expect(again.body).toEqual({ same: true, mark: pack.mark, madeAt: again.body.madeAt, behind: null })
  // What is agreed for a match goes along, as it was said and with how robots ended it once it is over.
  const body: PlanBody = {
    ...{ alliance: 'red', threat: { team: blue[0].team, marker: null }, note: 'Slow at the gantry' },
    ...{ win: 0.5, scores: { ours: 90, theirs: 88 } },
    instead: { goals: [['piers'], ['gantry', 'piers'], []], own: 0.5, win: 0.625 },
    jobs: red.map(({ team }) => ({
      ...{ team, start: pack.game.starts[0]!.id, sources: [], goals: ['piers'], finish: 'dry-dock', call: 12 },
    })),
  }
  const plan = { match: id, from: pack.from, body }
  const agreed = await server.send('POST', `/api/events/${event.id}/plans`, plan)
  expect(agreed.body).toMatchObject({ ...plan, person: null })
  expect((await server.send('POST', `/api/events/${event.id}/plans`, { ...plan, match: 'none' })).status).toBe(404)
  const wrong = await server.send('POST', `/api/events/${event.id}/plans`, { ...plan, body: { ...body, win: 2 } })
  expect(wrong.body.error.path).toEqual(['body', 'win'])
  const other = (await server.get(`${address}?since=${pack.mark}`)).body
  expect(other.plans).toEqual([agreed.body])
  expect(other.robots).toEqual(pack.robots)
})

test('Ours is the team that the event names, else the one that was timed in practice', () => {
  const { own, ...unsaid } = event
  const row = (origin: 'practice' | 'live', team: string) =>
    ({ row: { kind: 'observation', body: { origin } }, team }) as unknown as Known['inForce'][number]
  const inForce = [row('live', '90001'), row('practice', '90002'), row('practice', '90002')]
  expect(ownTeams(event, { inForce })).toEqual([own])
  expect(ownTeams(unsaid, { inForce })).toEqual(['90002'])
  expect(ownTeams(unsaid, { inForce: [] })).toEqual([])
})

test('A pack is compressed once, and what is another each time follows in the same stream', async () => {
  const exact = (await server.get(address)).body
  const bytes = async (query: string, accept: string) => {
    // Plain HTTP, so that nothing is unpacked on the way.
    const answer = await new Promise<IncomingMessage>((resolve, reject) => {
      request(`${server.url}${address}${query}`, { headers: { 'accept-encoding': accept } }, resolve)
        .on('error', reject)
        .end()
    })
    return { answer, body: await buffer(answer) }
  }
  const told = await bytes('?kept=true', 'gzip')
  expect(told.answer.headers['content-encoding']).toBe('gzip')
  // `gunzipSync` checks sum and length; an independent program reads one member and nothing behind it.
  const text = gunzipSync(told.body).toString()
  expect(execFileSync('gzip', ['-dc'], { input: told.body, maxBuffer: 1e8 }).toString()).toBe(text)
  const { madeAt, ...pack } = JSON.parse(text)
  expect({ ...pack, madeAt: exact.madeAt }).toEqual(exact)
  expect(JSON.parse((await bytes('?kept=true', 'identity')).body.toString())).toMatchObject(pack)
  // The part that is kept has the same bytes, whenever it is asked for.
  await new Promise((resolve) => setTimeout(resolve, 5))
  const again = await bytes('?kept=true', 'gzip')
  expect(JSON.parse(gunzipSync(again.body).toString()).madeAt > madeAt).toBe(true)
  const kept = told.body.length - 200
  expect(again.body.subarray(0, kept).equals(told.body.subarray(0, kept))).toBe(true)
})
