import { afterAll, beforeAll, expect, test } from 'vitest'
import { ownTeam, strengths } from '../../seed/event/index.ts'
import { seededEvent } from '../../seed/index.ts'
import { onlyWorkspace } from '../../src/app.ts'
import type { TeamEstimate } from '../../src/model/scouting/estimates/index.ts'
import { seedIfEmpty } from '../../src/seeding.ts'
import { type Server, startServer } from './server.ts'

const { event, matches, played, records } = seededEvent()
let server: Server

beforeAll(async () => {
  server = await startServer()
  await seedIfEmpty(server.store, onlyWorkspace)
})
afterAll(() => server.close())

const address = `/api/events/${event.id}`
const estimates = async () => (await server.get(`${address}/estimates`)).body

test('An event’s teams are estimated from its records, and what drew the demo lies where the intervals say', async () => {
  const { teams, matches: seen, records: counted } = await estimates()
  expect(teams.map(({ team }: TeamEstimate) => team)).toEqual(event.teams.map(({ team }) => team))
  expect(seen).toBe(played.length)
  expect(counted).toBe(
    records.filter(({ kind, body }) => kind === 'observation' && 'match' in body && body.match !== null).length,
  )

  // The demo's pieces are drawn around each team's strength (seed/event/teams.ts), so that the truth is known here.
  const inside = (of: (team: TeamEstimate) => readonly [number, number], truth: (team: string) => number) =>
    teams.filter((each: TeamEstimate) => {
      const [low, high] = of(each)
      const value = truth(each.team)
      return low <= value && value <= high
    }).length
  const tried = (team: string) => {
    const { teleop, misses } = strengths.get(team)!
    return (teleop.piers + teleop.gantry + teleop.lightship) * (1 + misses)
  }
  const attempts = inside(({ attempts: { interval95 } }) => interval95, tried)
  const leaves = inside(
    (each) => each.leaves.interval95,
    (team) => strengths.get(team)!.leaves,
  )
  // Of 25 with 95 %, fewer than 20 happen once in five thousand events.
  expect(attempts).toBeGreaterThanOrEqual(20)
  expect(leaves).toBeGreaterThanOrEqual(20)
})

test('One more record changes what is believed of its team', async () => {
  const team = '90004'
  const of = async () => (await estimates()).teams.find((each: TeamEstimate) => each.team === team)
  const before = await of()
  const row = records.find((each) => each.kind === 'observation' && each.body.team === team)!
  const id = '0195b2a0-0000-7000-8000-00000000beef'
  const timeline = Array.from({ length: 30 }, (_, n) => ({ elapsed: 20 + 4 * n, what: 'scored', goal: 'piers' }))
  const body = { ...(row.body as object), id, device: 'phone-new', sequence: 1, scout: 'Nils', timeline }
  const fresh = { ...row, id, device: 'phone-new', sequence: 1, scout: 'Nils', body }
  const sent = await server.send('POST', '/api/records', { device: 'phone-new', unsent: 0, rows: [fresh] })
  expect(sent.body.answers).toEqual([{ id, outcome: 'held', again: false }])
  const after = await of()
  // Two records of one robot in one match are one match, averaged.
  expect(after.matches).toBe(before.matches)
  expect(after.goals.piers.placed.mean).toBeGreaterThan(before.goals.piers.placed.mean + 0.3)
})

test('A team’s page has its matches as they were seen, and what it claims; one that is not of the event is not found', async () => {
  const team = event.teams[2]!.team
  const { estimate, watched, claims } = (await server.get(`${address}/teams/${team}`)).body
  expect(estimate.team).toBe(team)
  expect(watched.length).toBe(estimate.matches)
  for (const { match, scored, timeline } of watched) {
    const own = played.find((each) => each.match.id === match)!.performances.find((each) => each.team === team)!
    expect(scored).toEqual(Object.fromEntries(Object.entries(own.teleop).filter(([, n]) => n > 0)))
    expect(timeline.at(-1).elapsed).toBeLessThanOrEqual(152)
  }
  expect(claims).toHaveLength(1)
  expect((await server.get(`${address}/teams/12345`)).status).toBe(404)
  expect((await server.get('/api/events/nowhere/estimates')).status).toBe(404)
})

test('A match to come is played by its robots as they were seen, the same for everybody until more is known', async () => {
  const next = 'qualification-24'
  const forecast = () => server.get(`${address}/matches/${next}/forecast`)
  const { body } = await forecast()
  const { report, neverSeen } = body
  expect(neverSeen).toEqual([])
  expect(report.win.probability + report.tie.probability + report.loss.probability).toBeCloseTo(1, 9)
  expect(report.replicates).toBe(4000)
  expect((await forecast()).body).toEqual(body)
  // By strengths of the demo: what a match's robots are worth on average lies within what simulated matches come to.
  const match = matches.find(({ id }) => id === next)!
  const strength = (side: 'red' | 'blue') =>
    match[side].reduce((sum, { team }) => {
      const { teleop, auto } = strengths.get(team)!
      return sum + 3 * teleop.piers + 6 * teleop.gantry + 4 * auto.piers + 8 * auto.gantry
    }, 0)
  const lead = strength('red') - strength('blue')
  expect(Math.abs(report.margin.mean - lead)).toBeLessThan(report.margin.sd)
  expect((await server.get(`${address}/matches/nothing/forecast`)).status).toBe(404)
})

test('A record with two goals swapped is doubted, with officials and scouts side by side, until it is corrected', async () => {
  const { body } = await server.get(`${address}/doubts`)
  const wrong = records.find(
    ({ kind, body: of }) =>
      kind === 'observation' && 'team' in of && 'match' in of && of.match === 'qualification-17' && of.team === '90023',
  )!
  const doubt = body.find(({ match }: { match: string }) => match === 'qualification-17')
  expect(doubt).toMatchObject({
    kind: 'swapped',
    alliance: 'red',
    scout: wrong.scout,
    records: [wrong.id],
    goals: ['piers', 'gantry'],
  })
  const evidence = doubt.evidence.find((each: { category: { goal?: string } }) => each.category.goal === 'piers')
  expect(evidence.official).toBe(played.find(({ match }) => match.id === 'qualification-17')!.result.red.pieces!.piers)
  // Corrected, it is doubted no more.
  const turned = { piers: 'gantry', gantry: 'piers' } as { [goal: string]: string }
  const timeline = wrong.kind === 'observation' ? (wrong.body.timeline ?? []) : []
  const corrected = await server.send('POST', `${address}/corrections`, {
    record: wrong.id,
    changes: {
      timeline: timeline.map((each) => ({ ...each, ...(each.goal && { goal: turned[each.goal] ?? each.goal }) })),
    },
    reason: 'Piers and gantry were taken for each other',
  })
  expect(corrected.status, JSON.stringify(corrected.body)).toBe(200)
  const left = (await server.get(`${address}/doubts`)).body
  expect(left.filter(({ match }: { match: string }) => match === 'qualification-17')).toEqual([])
})

test('What teams bring is solved from totals, which it adds up to on the whole', async () => {
  const solved = new Map<string, { mean: number; totals: number }>()
  for (const { team } of event.teams) {
    const { body } = await server.get(`${address}/teams/${team}`)
    expect(Object.keys(body.solved).sort()).toEqual(['autonomous', 'finishes', 'goals', 'total'])
    const { mean, interval80, interval95 } = body.solved.goals
    for (const [low, high] of [interval80, interval95]) expect(low < mean && mean < high).toBe(true)
    solved.set(team, body.solved.goals)
  }
  const gone = new Set(matches.flatMap(({ voids }) => voids ?? []))
  const totals = played
    .filter(({ match }) => !gone.has(match.id))
    .flatMap(({ match, result }) =>
      (['red', 'blue'] as const).map((side) => ({
        points: result[side].points.goals!,
        teams: match[side].filter(({ state }) => state !== 'absent').map(({ team }) => team),
      })),
    )
  const sum = (numbers: number[]) => numbers.reduce((total, each) => total + each, 0)
  const expected = sum(totals.flatMap(({ teams }) => teams.map((team) => solved.get(team)!.mean)))
  expect(expected / sum(totals.map(({ points }) => points))).toBeCloseTo(1, 1)
  for (const [team, { totals: own }] of solved) {
    expect(own, team).toBe(totals.filter(({ teams }) => teams.includes(team)).length)
  }
})

test('Robots with timelines are named, those that practised first; one is put against a design', async () => {
  const field = `${address}/field`
  const { body: timed } = await server.get(field)
  expect(timed[0]).toEqual({ team: ownTeam, matches: expect.any(Number), practice: 10 })
  expect(timed).toHaveLength(event.teams.length)

  const { body } = await server.get(`${field}/${ownTeam}?design=shearwater&only=practice`)
  expect(body.design).toEqual({ id: 'shearwater', name: 'Shearwater', revision: 1 })
  const { whole, parts, drivers, runs, legs } = body.report
  // The demo's practice is drawn slower than its design, in collecting above all (seed/event/practice.ts).
  expect(whole.difference.interval95[0]).toBeGreaterThan(0)
  expect(parts.collecting).toBeGreaterThan(parts.scoring)
  expect(legs[0].leg).toEqual({ kind: 'collect', source: 'channel' })
  expect(drivers.map(({ driver }: { driver: string }) => driver)).toEqual(['Pia', 'Sven'])
  expect(runs.every(({ kind }: { kind: string }) => kind === 'practice')).toBe(true)
  const all = (await server.get(`${field}/${ownTeam}?design=shearwater`)).body.report
  expect(all.runs).toHaveLength(timed[0].matches + 10)

  expect((await server.get(`${field}/${ownTeam}?design=nothing`)).status).toBe(404)
  expect((await server.get(`${field}/${ownTeam}?design=shearwater&revision=7`)).status).toBe(404)
  expect((await server.get(`${field}/${ownTeam}`)).status).toBe(400)
  expect((await server.get(`${field}/12345?design=shearwater`)).body.report.whole).toBeNull()
})

test('A copy keeps where its numbers come from, and what it says of that is checked', async () => {
  const { body: stored } = await server.get('/api/documents/design/shearwater')
  const fromField = {
    design: { id: 'shearwater', revision: 1 },
    event: event.id,
    team: ownTeam,
    matches: 0,
    practice: 10,
    trips: 58,
    shifts: [{ leg: { kind: 'collect', source: 'outer' }, stage: 'draw-in', seconds: 1.8 }],
  }
  const body = { ...stored.body, robot: { ...stored.body.robot, id: 'as-seen', name: 'As seen' }, fromField }
  const saved = await server.send('PUT', '/api/documents/design/as-seen', { base: null, body })
  expect(saved.status).toBe(200)
  expect((await server.get('/api/documents/design/as-seen')).body.body.fromField).toEqual(fromField)
  const wrong = { ...body, fromField: { ...fromField, trips: -1 } }
  const refused = await server.send('PUT', '/api/documents/design/as-seen', { base: 1, body: wrong })
  expect([refused.status, refused.body.error.path]).toEqual([400, ['body', 'fromField', 'trips']])
})
