import { afterAll, beforeAll, expect, test } from 'vitest'
import { ownTeam } from '../../seed/event/index.ts'
import { seededEvent } from '../../seed/index.ts'
import { inputOf } from '../../src/api/estimates/estimates.ts'
import { madeFrom } from '../../src/api/estimates/forecast.ts'
import { onlyWorkspace } from '../../src/app.ts'
import type { TeamEstimate } from '../../src/model/scouting/estimates/index.ts'
import { seedIfEmpty } from '../../src/seeding.ts'
import { type Server, startServer } from './server.ts'

const { event, matches, records, results } = seededEvent()
let server: Server

beforeAll(async () => {
  server = await startServer()
  await seedIfEmpty(server.store, onlyWorkspace)
})
afterAll(() => server.close())

const address = `/api/events/${event.id}`
const estimates = async () => (await server.get(`${address}/estimates`)).body

test('What was predicted of our team stands beside what was seen, by the design that the newest decision chose', async () => {
  const { design, designs, report } = (await server.get(`${address}/after/${ownTeam}`)).body
  expect(design.id).toBe('kittiwake')
  expect(designs.map(({ id }: { id: string }) => id)).toContain('puffin')
  const ours = matches.filter(({ red, blue }) => [...red, ...blue].some(({ team }) => team === ownTeam))
  expect(report.matches.map(({ match }: { match: string }) => match)).toEqual(ours.map(({ id }) => id))
  const kept = (await server.get(`${address}/forecasts`)).body.matches
  for (const { match, alliance, forecast, result } of report.matches) {
    const official = results.find((each) => each.match === match)
    expect(result?.ours ?? null).toBe(official?.[alliance as 'red' | 'blue'].points.total ?? null)
    const shown = kept.find((each: { match: string }) => each.match === match)
    expect(forecast?.win).toBe(shown && (alliance === 'red' ? shown.win : shown.loss) + shown.tie / 2)
  }
  const field = (await server.get(`${address}/field/${ownTeam}?design=kittiwake&only=match`)).body.report
  expect(report.field.seen).toBe(field.whole.field.mean)
  const other = (await server.get(`${address}/after/${ownTeam}?design=puffin`)).body
  expect(other.design.id).toBe('puffin')
  expect((await server.get(`${address}/after/${ownTeam}?design=nothing`)).status).toBe(404)
  expect((await server.get(`${address}/after/12345`)).status).toBe(404)
})

test('What is given to other teams is a file without anybody’s name', async () => {
  const { body, headers } = await server.get(`${address}/published/${ownTeam}`)
  expect(headers.get('content-disposition')).toContain(`${event.id}-published.json`)
  expect(body.results).toHaveLength(results.length - 1)
  const scouts = new Set(records.map(({ scout }) => scout))
  expect(scouts.size).toBeGreaterThan(3)
  for (const scout of scouts) expect(JSON.stringify(body)).not.toContain(`"${scout}"`)
  expect(JSON.stringify(body)).not.toMatch(/interval|estimate|forecast[^s]|note|device/i)
})

test('Final ranks of all teams follow from simulated matches, some at a time; what is done is kept', async () => {
  const coming = matches.length - results.length
  const { body: first } = await server.send('POST', `${address}/seeds/matches`, { most: 4 })
  expect(first).toEqual({ done: 4, total: coming })
  const { body } = await server.get(`${address}/seeds/${ownTeam}`)
  expect((await server.send('POST', `${address}/seeds/matches`, {})).body).toEqual({ done: coming, total: coming })
  const { teams, ours, seasons } = body.report
  expect([body.coming, seasons, teams.length]).toEqual([coming, 10_000, event.teams.length])
  // Each rank is somebody's, and each team has one: rows and columns add up to 1.
  for (const [place] of teams.entries()) {
    const column = teams.reduce((sum: number, { ranks }: { ranks: number[] }) => sum + ranks[place]!, 0)
    expect(column).toBeCloseTo(1, 9)
    expect(teams[place].ranks.reduce((sum: number, chance: number) => sum + chance, 0)).toBeCloseTo(1, 9)
  }
  expect(ours).toHaveLength(5)
  for (const { win, worth } of ours) {
    expect(win).toBeGreaterThan(0.02)
    expect(win).toBeLessThan(0.98)
    expect(worth.places).toBeGreaterThan(0)
  }
  // The same for whoever asks, until more is known.
  expect((await server.get(`${address}/seeds/${ownTeam}`)).body).toEqual(body)
})

test('Looks are worth what they may change about whom we invite, and go to people who are free', async () => {
  const where = (more: object = {}) => server.send('POST', `${address}/looks`, { team: ownTeam, ...more })
  const { body } = await where()
  expect(body.decision).toMatchObject({ seed: 6, alliances: 6 })
  expect(body.looks).toEqual([])
  const [best] = body.teams
  for (const { worth } of body.teams) expect(worth).toBeLessThanOrEqual(best.worth)
  expect(body.teams.map(({ team }: { team: string }) => team)).not.toContain(ownTeam)
  const planned = (await where({ people: ['ada'], longest: 2, rest: 1 })).body
  expect(planned.looks.length).toBeGreaterThan(2)
  expect(planned.looks.some(({ team }: { team: string }) => team === best.team)).toBe(true)
  // Two in a row at most, and each look is the seat of its robot.
  const places = planned.looks.map(({ match }: { match: string }) => matches.findIndex(({ id }) => id === match))
  for (const [k, place] of places.entries()) expect(places[k + 2] === place + 2).toBe(false)
  for (const [k, { match, seat, person }] of planned.assignments.entries()) {
    const found = matches.find(({ id }) => id === match)!
    expect([found[seat.alliance as 'red' | 'blue'][seat.position - 1]!.team, person]).toEqual([
      planned.looks[k].team,
      'ada',
    ])
  }
})

test('An earlier event that a lead chooses counts by its discount, follows its records, and is told where it is not here', async () => {
  const team = '90004'
  const own = async () => (await estimates()).teams.find((each: TeamEstimate) => each.team === team)
  const plain = await own()
  const id = 'trials'
  const some = matches.slice(0, 4)
  await server.send('PUT', `/api/documents/event/${id}`, { base: null, body: { ...event, id, name: 'Trials' } })
  const { mark } = (await server.get(`/api/events/${id}/matches`)).body
  await server.send('PUT', `/api/events/${id}/matches`, { matches: some, mark })
  const known = new Set(some.map(({ id: match }) => match))
  const copies = records.flatMap((row, k) => {
    if (row.kind !== 'observation' || row.body.match === null || !known.has(row.body.match)) return []
    const fresh = `0195b2a0-0000-7000-9000-${String(k).padStart(12, '0')}`
    const { replaces: _, ...body } = row.body
    return [
      {
        ...row,
        id: fresh,
        event: id,
        device: 'phone-old',
        sequence: k + 1,
        body: { ...body, id: fresh, device: 'phone-old', sequence: k + 1 },
      },
    ]
  })
  const send = (rows: unknown[]) => server.send('POST', '/api/records', { device: 'phone-old', unsent: 0, rows })
  expect((await send(copies.slice(1))).status).toBe(200)
  const [offer] = (await server.get(`${address}/earlier`)).body
  expect(offer).toMatchObject({ event: id, name: 'Trials', matches: 4 })

  const told = (await server.send('POST', `${address}/earlier`, { earlier: id, discount: 0.5, changed: ['90001'] }))
    .body.teams
  const change = told.find((each: { team: string }) => each.team === team)
  expect(change.without.attempts).toEqual(plain.attempts)
  expect(change.worth).toBeCloseTo(0.5 * change.before, 9)

  const at = `/api/documents/event/${event.id}`
  const { body, revision } = (await server.get(at)).body
  const choose = (base: number, earlier?: object) =>
    server.send('PUT', at, { base, body: { ...body, ...(earlier && { earlier }) } })
  const itself = await choose(revision, { event: event.id, discount: 0.5 })
  expect([itself.status, itself.body.error.path]).toEqual([400, ['body', 'earlier', 'event']])
  const workspace = server.store.workspace(await server.store.ensureWorkspace(onlyWorkspace))
  const from = async () => madeFrom(await inputOf({ workspace }, event.id), [])
  const before = await from()
  expect((await choose(revision, { event: id, discount: 0.5, changed: ['90001'] })).status).toBe(200)
  expect((await own()).attempts).toEqual(change.with.attempts)
  expect((await estimates()).earlier).toMatchObject({ event: id, name: 'Trials', discount: 0.5, matches: 4 })
  // A record that arrives at the earlier event changes what is believed here, and what a forecast is made from.
  const chosen = await from()
  const about = copies[0]!.body.team
  const of = async () => (await estimates()).teams.find((each: TeamEstimate) => each.team === about).attempts
  const less = await of()
  await send(copies.slice(0, 1))
  expect(await of()).not.toEqual(less)
  expect(new Set([before, chosen, await from()]).size).toBe(3)

  await server.bare('DELETE', `/api/documents/event/${id}`)
  expect((await estimates()).earlier).toMatchObject({ event: id, name: null, matches: null })
  expect(await own()).toEqual(plain)
  expect((await choose(revision + 1)).status).toBe(200)
})
