import { afterAll, beforeAll, expect, test } from 'vitest'
import { breakwater, seededEvent } from '../../seed/index.ts'
import type { Observation } from '../../src/model/scouting/index.ts'
import { type Server, startServer } from './server.ts'

const { matches, results, records } = seededEvent()
const observations = records.flatMap((row) => (row.kind === 'observation' ? [row.body] : []))
const visits = records.flatMap((row) => (row.kind === 'visit' ? [row.body] : []))
const known = { game: breakwater.game, matches, observations, results, level: 'local' }

let server: Server
beforeAll(async () => {
  server = await startServer()
})
afterAll(() => server.close())

const estimate = (body: object) => server.send('POST', '/api/compute/estimate', body)
const forecast = (body: object) => server.send('POST', '/api/compute/forecast', body)

test('records in, estimates and doubts out, and nothing is stored', async () => {
  const { status, body } = await estimate({ ...known, visits })
  expect(status, JSON.stringify(body.error)).toBe(200)
  expect(body.teams).toHaveLength(25)
  for (const { goals, trip, finish, points, matches: own, solved } of body.teams) {
    expect(own).toBeGreaterThan(0)
    // Points of goals are the sum of their pieces' points; the lightship pays by the second, of which nothing is said here.
    const sum = goals.piers.points.mean + goals.gantry.points.mean + goals.lightship.points.mean
    expect(sum).toBeCloseTo(points.mean, 6)
    expect(goals.lightship.points.mean).toBe(0)
    const one = (shares: { [id: string]: { mean: number } }) =>
      Object.values(shares).reduce((total, { mean }) => total + mean, 0)
    expect(one(finish)).toBeCloseTo(1, 9)
    expect(one(trip.mix)).toBeCloseTo(1, 9)
    expect(one(trip.pieces)).toBeCloseTo(1, 9)
    expect(trip.collecting.mean).toBeGreaterThan(0)
    expect(trip.collecting.mean).toBeLessThan(trip.time.median.mean * trip.time.within.mean)
    expect(solved.interval95[0]).toBeLessThan(solved.mean)
  }
  expect(body.teams.filter(({ claimed }: { claimed?: object }) => claimed)).toHaveLength(visits.length)
  expect(body.prior.points.ownWeight).toBe(0)
  expect(body.doubts[0]).toMatchObject({ kind: 'swap', match: 'qualification-17', alliance: 'red' })
  expect((await server.get('/api/documents/event')).body).toEqual([])
})

test('a match that weighs half after a while moves towards what was seen last', async () => {
  const last = matches.find(({ id }) => id === 'qualification-23')!
  const team = last.red[0].team
  const many = (match: string | null): Partial<Observation> =>
    match === last.id
      ? { timeline: Array.from({ length: 60 }, (_, n) => ({ elapsed: 18 + 2 * n, what: 'scored', goal: 'piers' })) }
      : {}
  const changed = observations.map((each) => (each.team === team ? { ...each, ...many(each.match) } : each))
  const of = async (more: object) => {
    const { body } = await estimate({ ...known, observations: changed, ...more })
    return body.teams.find((each: { team: string }) => each.team === team).goals.piers.attempts.mean
  }
  expect(await of({ halfLife: 1 })).toBeGreaterThan((await of({})) + 1)
})

test('a match of a schedule is forecast with red as ours; another one is refused by name', async () => {
  const asked = { ...known, match: 'qualification-30', replicates: 1000, seed: 4 }
  const { status, body } = await forecast(asked)
  expect(status, JSON.stringify(body.error)).toBe(200)
  expect(body.win.probability + body.tie.probability + body.loss.probability).toBeCloseTo(1, 9)
  expect(body.replicates).toBe(1000)
  expect((await forecast(asked)).body).toEqual(body)
  expect((await forecast({ ...asked, match: 'final' })).body.error).toMatchObject({
    code: 'malformed',
    path: ['match'],
  })
  // A bonus that asks for other amounts at other levels.
  expect((await forecast({ ...asked, level: undefined })).body.error).toMatchObject({
    code: 'malformed',
    path: ['level'],
  })
})

test('bodies up to 16 MB are read, and what is wrong is named', async () => {
  const note = 'x'.repeat(2000)
  const long = Array.from({ length: 1500 }, (_, n): Observation => {
    const hex = n.toString(16).padStart(12, '0')
    return { ...observations[0]!, id: `0192f3a4-0000-7000-8000-${hex}`, note, timeline: [], match: null }
  })
  expect((await estimate({ ...known, observations: long })).status).toBe(200)
  expect((await estimate({ ...known, halfLife: 0 })).body.error).toMatchObject({
    code: 'malformed',
    path: ['halfLife'],
  })
  const [first, ...others] = observations
  const wrong = { ...first!, identifiedBy: 'guess' }
  expect((await estimate({ ...known, observations: [wrong, ...others] })).body.error.path).toEqual([
    'observations',
    0,
    'identifiedBy',
  ])
})

test('what was answered of an earlier event is taken in, at the discount of each team', async () => {
  const earlier = (await estimate(known)).body.teams
  const first = earlier.toSorted((a: { points: Mean }, b: { points: Mean }) => b.points.mean - a.points.mean)[0]
  const fresh = { ...known, observations: [], results: [] }
  const of = async (priors: object) => {
    const { status, body } = await estimate({ ...fresh, priors })
    expect(status, JSON.stringify(body.error)).toBe(200)
    return body.teams.find((each: { team: string }) => each.team === first.team).points.mean as number
  }
  const told = (discount: number, more: object = {}) => ({
    [first.team]: { estimate: { ...first, ...more }, discount },
  })
  const [none, half, whole] = [await of({}), await of(told(0.3)), await of(told(1))]
  const off = (points: number) => Math.abs(points / first.points.mean - 1)
  expect(off(half)).toBeLessThan(off(none))
  expect(off(whole)).toBeLessThan(off(half))
  // As much as its own records alone would say, with nobody else seen.
  const own = observations.filter(({ team }) => team === first.team)
  const alone = (await estimate({ ...fresh, observations: own })).body.teams
  const same = alone.find((each: { team: string }) => each.team === first.team)
  expect(off(whole)).toBeLessThan(1.2 * off(same.points.mean))
  const refused = async (priors: object) => (await estimate({ ...fresh, priors })).body.error
  const stranger = { goals: { ...first.goals, lagoon: first.goals.piers } }
  expect(await refused(told(1, stranger))).toMatchObject({
    code: 'malformed',
    path: ['priors', first.team, 'estimate', 'goals', 'lagoon'],
  })
  expect(await refused(told(1.5))).toMatchObject({ path: ['priors', first.team, 'discount'] })
  expect(await refused(told(1, { trip: { ...first.trip, pieces: { many: { mean: 1 } } } }))).toMatchObject({
    path: ['priors', first.team, 'estimate', 'trip', 'pieces', 'many'],
  })
})

interface Mean {
  mean: number
}

test('an event of which nothing is known is answered too', async () => {
  const { body } = await estimate({ game: breakwater.game, matches: [], observations: [] })
  expect(body.teams).toEqual([])
  expect(body.prior.trip).toBeNull()
  const { teams } = (await estimate({ game: breakwater.game, matches, observations: [] })).body
  expect(teams).toHaveLength(25)
  // The schedule itself says of one robot that it did not come.
  expect(teams.filter((team: { matches: number }) => team.matches > 0)).toMatchObject([{ matches: 1 }])
})

test('a design and records in, what both say of its trips out; a robot that is not of the game is refused by name', async () => {
  const own = observations.filter(({ match }) => match === null)
  const robot = breakwater.designs.find(({ robot }) => robot.id === 'shearwater')!.robot
  const field = (body: object) => server.send('POST', '/api/compute/field', body)
  const { status, body } = await field({ game: breakwater.game, robot, matches: [], observations: own })
  expect(status, JSON.stringify(body.error)).toBe(200)
  expect(body.runs).toHaveLength(own.length)
  expect(body.whole.trips).toBe(body.trips)
  expect(body.seen).toHaveLength(body.trips + body.cutOff)
  const off = await field({
    game: breakwater.game,
    robot: { ...robot, collect: { pond: robot.collect['outer'] } },
    matches: [],
    observations: own,
  })
  expect([off.status, off.body.error.path.slice(0, 2)]).toEqual([400, ['robot', 'collect']])
})
