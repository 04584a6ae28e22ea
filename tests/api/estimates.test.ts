import { afterAll, beforeAll, expect, test } from 'vitest'
import { strengths } from '../../seed/event/index.ts'
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
  expect(counted).toBe(records.filter(({ kind }) => kind === 'observation').length)

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
  // The scout is told just that of the own record.
  const match = (row.body as { match: string }).match
  const told = await server.send('POST', `${address}/changed`, { records: [id] })
  const change = { record: id, match, team, without: before.attempts.mean, with: after.attempts.mean }
  expect(told.body).toEqual([{ ...change, matches: after.matches }])
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

test('Each number of a team says which records it is made of', async () => {
  const team = '90004'
  const made = (await server.get(`${address}/teams/${team}/made`)).body
  const { estimate, watched } = (await server.get(`${address}/teams/${team}`)).body
  const records = new Set(watched.flatMap((each: { records: { id: string }[] }) => each.records.map(({ id }) => id)))
  for (const each of [made.attempts, made.trip, made.stops, made.goals.piers.success, made.finish.davit]) {
    expect(each.matches.length).toBeGreaterThan(2)
    for (const { records: own } of each.matches) for (const id of own) expect(records.has(id)).toBe(true)
    expect((each.own?.share ?? 0) + (each.claimed?.share ?? 0) + each.event.share).toBeCloseTo(1, 9)
  }
  const { own, claimed, event: usual } = made.attempts
  const sum = own.mean * own.share + (claimed?.mean ?? 0) * (claimed?.share ?? 0) + usual.mean * usual.share
  // Taken over 1,024 draws on either side.
  expect(sum / estimate.attempts.mean).toBeCloseTo(1, 2)
  expect(made.running.at(-1).mean).toBeCloseTo(estimate.attempts.mean, 9)
  expect((await server.get(`${address}/teams/12345/made`)).status).toBe(404)
})

test('The half-life that a lead chooses counts from then on, and what speaks for each is told', async () => {
  const team = '90004'
  const scores = (await server.get(`${address}/half-lives`)).body
  expect(scores.map(({ halfLife }: { halfLife: number | null }) => halfLife)).toEqual([null, 8, 4, 2])
  expect(scores[0]).toMatchObject({ gain: 0, standardError: 0 })
  const made = async () => (await server.get(`${address}/teams/${team}/made`)).body
  const before = (await estimates()).teams.find((each: TeamEstimate) => each.team === team)
  const at = `/api/documents/event/${event.id}`
  const { body, revision } = (await server.get(at)).body
  const choose = (base: number, of: object) => server.send('PUT', at, { base, body: of })
  expect((await choose(revision, { ...body, halfLife: 0.1 })).status).toBe(400)
  expect((await choose(revision, { ...body, halfLife: 2 })).status).toBe(200)
  expect((await estimates()).halfLife).toBe(2)
  const after = (await estimates()).teams.find((each: TeamEstimate) => each.team === team)
  expect(after.attempts.ownWeight).toBeLessThan(before.attempts.ownWeight)
  const weights = (await made()).attempts.matches.map(({ weight }: { weight: number }) => weight)
  expect(weights.slice(-3)).toEqual([0.5, 2 ** -0.5, 1])
  // Evidence is of all half-lives alike, whichever counts.
  expect((await server.get(`${address}/half-lives`)).body).toEqual(scores)
  expect((await choose(revision + 1, body)).status).toBe(200)
  expect((await estimates()).teams.find((each: TeamEstimate) => each.team === team)).toEqual(before)
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
  // Without it the robot is one match less known, and its next matches end a little differently.
  const without = (await server.send('POST', `${address}/doubts/without`, { records: [wrong.id] })).body
  const [of] = without.teams
  expect([of.team, of.with.matches - of.without.matches]).toEqual(['90023', 1])
  const { teams } = await estimates()
  expect(of.with.attempts).toEqual(teams.find((each: TeamEstimate) => each.team === '90023').attempts)
  expect(of.without.attempts.interval80).not.toEqual(of.with.attempts.interval80)
  expect(without.matches.length).toBe(Math.min(3, without.coming))
  for (const { match: id, alliance, with: now, without: then } of without.matches) {
    const match = matches.find((each) => each.id === id)!
    expect(match[alliance as 'red' | 'blue'].some(({ team }) => team === '90023')).toBe(true)
    expect(played.some((each) => each.match.id === id)).toBe(false)
    const { report } = (await server.get(`${address}/matches/${id}/forecast`)).body
    expect(now.score).toBe((alliance === 'red' ? report.score.ours : report.score.theirs).mean)
    expect(then.score).not.toBe(now.score)
    // One record of some six moves a match by less than its own spread.
    expect(Math.abs(then.score - now.score)).toBeLessThan(report.margin.sd)
  }
  const none = { records: ['0195b2a0-0000-7000-8000-000000000001'] }
  expect((await server.send('POST', `${address}/doubts/without`, none)).status).toBe(404)
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
