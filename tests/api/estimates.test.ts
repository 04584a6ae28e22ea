import { afterAll, beforeAll, expect, test } from 'vitest'
import { forecasts as shownBefore } from '../../seed/event/forecasts.ts'
import { ownTeam, strengths } from '../../seed/event/index.ts'
import { seededEvent } from '../../seed/index.ts'
import { hashOf } from '../../src/api/records/rows.ts'
import { onlyWorkspace } from '../../src/app.ts'
import type { TeamEstimate } from '../../src/model/scouting/estimates/index.ts'
import { canonicalJson } from '../../src/model/scouting/index.ts'
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
  expect((await server.get(`${address}/teams/toString/made`)).status).toBe(404)
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
  // Kept as it is shown, and once, however often it is asked for.
  expect(body.kept.id).toMatch(/^[0-9a-f]{64}$/)
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

test('Who drove in a match is noted with the event, and the field is told by driver anew', async () => {
  const address = `/api/documents/event/${event.id}`
  const field = () => server.get(`/api/events/${event.id}/field/${ownTeam}?design=shearwater`)
  const before = (await field()).body.report
  const played = before.runs.find(({ kind }: { kind: string }) => kind === 'match')
  expect(played.driver).toBeNull()
  const stored = (await server.get(address)).body
  // Another team's driver in the same match is nobody of ours.
  const others = { match: played.id, team: event.teams.at(-1)!.team, driver: 'Ole' }
  const drivers = [{ match: played.id, team: ownTeam, driver: 'Pia' }, others]
  const put = (body: object) => server.send('PUT', address, { base: stored.revision, body })
  expect((await put({ ...stored.body, drivers })).status).toBe(200)
  const after = (await field()).body.report
  expect(after.runs.find(({ id }: { id: string }) => id === played.id).driver).toBe('Pia')
  const runsOf = (report: typeof before, driver: string | null) =>
    report.runs.filter((run: { driver: string | null }) => run.driver === driver).length
  expect(runsOf(after, 'Pia')).toBe(runsOf(before, 'Pia') + 1)
  expect(runsOf(after, 'Ole')).toBe(0)
  const many = Array.from({ length: 1001 }, (_, n) => ({ match: `m${n}`, team: ownTeam, driver: 'Pia' }))
  const next = (body: object) => server.send('PUT', address, { base: stored.revision + 1, body })
  expect((await next({ ...stored.body, drivers: many })).status).toBe(400)
  await next(stored.body)
})

test('A design can be taken as a decision record has frozen it, whatever it is now', async () => {
  const address = '/api/documents/design/shearwater'
  const field = (query: string) =>
    server.get(`/api/events/${event.id}/field/${ownTeam}?design=shearwater&only=practice${query}`)
  const decision = '&decision=leave-the-hook-out'
  const [now, then] = [(await field('')).body, (await field(decision)).body]
  expect(now.decision).toBeNull()
  expect(then.decision).toMatchObject({ id: 'leave-the-hook-out', revision: 1 })
  expect(then.design).toEqual({ id: 'shearwater', name: 'Shearwater', revision: 1 })
  // The demo's design has not changed since.
  expect(then.report.whole.model.mean).toBeCloseTo(now.report.whole.model.mean, 9)

  const stored = (await server.get(address)).body
  const slower = structuredClone(stored.body)
  slower.robot.drive.topSpeed /= 2
  expect((await server.send('PUT', address, { base: stored.revision, body: slower })).status).toBe(200)
  const [slow, still] = [(await field('')).body, (await field(decision)).body]
  expect(slow.report.whole.model.mean).toBeGreaterThan(now.report.whole.model.mean + 0.5)
  expect(still.report).toEqual(then.report)
  await server.send('PUT', address, { base: stored.revision + 1, body: stored.body })

  expect((await field(`${decision}&revision=1`)).status).toBe(400)
  expect((await field('&decision=none')).status).toBe(404)
  const puffin = await server.get(`/api/events/${event.id}/field/${ownTeam}?design=puffin${decision}`)
  expect(puffin.status).toBe(400)
  expect(JSON.stringify(puffin.body)).toContain('has no option with the design puffin')
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

test('What was shown before a match is kept, judged once it has a result, and not made up afterwards', async () => {
  const record = async () => (await server.get(`${address}/forecasts`)).body
  const match = 'qualification-24'
  const rowOf = (rows: { match: string }[], id: string) => rows.find((each) => each.match === id)
  // Of the demo's forecasts the one of the replayed match is not judged.
  const before = await record()
  expect(before.judgement.matches).toBe(shownBefore.length - 1)
  expect(rowOf(before.matches, match)).toMatchObject({ state: 'waiting', result: null })
  // A correction came in between: from what is known now nothing is kept yet.
  const made = (await server.send('POST', `${address}/forecasts`, { most: 1 })).body
  expect(made).toMatchObject({ made: [{ match }], left: made.coming - 1 })
  const shown = (await server.get(`${address}/matches/${match}/forecast`)).body
  expect(shown.kept.madeAt).toBe(made.made[0].madeAt)
  const next = (await server.send('POST', `${address}/forecasts`, { most: 1 })).body
  expect(next).toMatchObject({ made: [{ match: 'qualification-25' }], left: made.coming - 2 })

  // Of a match that is over, or being recorded, nothing is kept.
  const over = (await server.get(`${address}/matches/qualification-3/forecast`)).body
  expect([over.kept, over.report.replicates]).toEqual([null, 4000])
  const revision = (await server.get(`${address}/matches`)).body.matches.find(
    (each: { match: { id: string } }) => each.match.id === match,
  ).revision
  const side = (total: number) => ({ points: { total } })
  const result = { match, red: side(61), blue: side(87) }
  const entry = { match, base: 0, matchRevision: revision, result }
  expect((await server.send('PUT', `${address}/results`, { results: [entry] })).status).toBe(200)

  const { played: all, judgement, matches: rows } = await record()
  expect(all).toBe(played.length)
  const row = rows.find((each: { match: string }) => each.match === match)
  expect(row).toMatchObject({ match, state: 'scored', id: shown.kept.id, result: { red: 61, blue: 87 } })
  expect(row.all).toHaveLength(2)
  expect(rowOf(rows, 'qualification-25')).toMatchObject({ state: 'waiting' })
  // Blue won: (win + tie / 2)² of red comes to the mean.
  const { matches: judged, means } = before.judgement
  expect(judgement.matches).toBe(judged + 1)
  const sum = means.brier * judged + (row.win + row.tie / 2) ** 2
  expect(judgement.means.brier).toBeCloseTo(sum / (judged + 1), 12)
  expect(
    judgement.compared.map((each: { baseline: string; measure: string }) => `${each.baseline} ${each.measure}`),
  ).toEqual(['coin brier', 'coin rps', 'event crps', 'teams brier', 'teams rps', 'teams crps'])
  expect((await server.get('/api/events/nowhere/forecasts')).status).toBe(404)
})

test('Forecasts go with an event’s archive, whose hash is the same where they came to; older archives have none', async () => {
  const target = await startServer({ pool: { threads: 1 } })
  try {
    const bring = (archive: object) => target.send('POST', '/api/events/archive', archive)
    const whole = (await server.get(`${address}/archive`)).body
    const count = whole.contents.forecasts.length
    expect(count).toBeGreaterThanOrEqual(shownBefore.length + 3)
    const withHash = (contents: object) => ({ ...whole, contents, hash: hashOf(canonicalJson(contents)) })
    const { forecasts, ...rest } = whole.contents
    const older = withHash(rest)
    expect((await bring(older)).status).toBe(200)
    expect((await target.get(`${address}/archive`)).body).toEqual(older)

    const better = { ...forecasts[1], body: { ...forecasts[1].body, win: 0, tie: 0, loss: 1 } }
    const forged = await bring(withHash({ ...rest, forecasts: [forecasts[0], better] }))
    expect([forged.status, forged.body.error.path]).toEqual([400, ['forecasts', 1, 'id']])

    const { parts } = (await bring(whole)).body
    expect(parts.filter(({ added }: { added: number }) => added > 0)).toMatchObject([
      { part: 'forecasts', added: count },
    ])
    expect((await target.get(`${address}/archive`)).body.hash).toBe(whole.hash)
    const [one, other] = await Promise.all([server, target].map((each) => each.get(`${address}/forecasts`)))
    expect(one!.body.judgement).toEqual(other!.body.judgement)
  } finally {
    await target.close()
  }
})
