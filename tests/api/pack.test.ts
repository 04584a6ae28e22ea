import { afterAll, beforeAll, expect, test } from 'vitest'
import { ownTeam } from '../../seed/event/index.ts'
import { seededEvent } from '../../seed/index.ts'
import { option as optionContract } from '../../src/api/contracts/index.ts'
import { type EventPack, packAnswer } from '../../src/api/pack/contracts.ts'
import { onlyWorkspace } from '../../src/app.ts'
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
  const { body, headers } = await server.get(address)
  if (body.error) throw new Error(JSON.stringify(body))
  const pack: EventPack = body
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
  expect(again.body).toEqual({ same: true, mark: pack.mark, madeAt: again.body.madeAt })
  const document = (await server.get(`/api/documents/event/${event.id}`)).body
  await server.send('PUT', `/api/documents/event/${event.id}`, {
    base: document.revision,
    body: { ...document.body, own: '90002' },
  })
  const other = (await server.get(`${address}?since=${pack.mark}`)).body
  expect([other.own, other.mark === pack.mark]).toEqual([['90002'], false])
})

test('Without a word of ours, it is the team that was timed in practice', async () => {
  const { revision, body } = (await server.get(`/api/documents/event/${event.id}`)).body
  const { own: _, ...unsaid } = body
  await server.send('PUT', `/api/documents/event/${event.id}`, { base: revision, body: unsaid })
  expect((await server.get(address)).body.own).toEqual([ownTeam])
})
