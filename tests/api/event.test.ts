import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { breakwater } from '../../seed/index.ts'
import { eventOf, match, result } from '../model/event/matches.ts'
import { type Server, startServer } from './server.ts'
import { claim, join, type Member } from './team.ts'

let server: Server
const at = '/api/events/harbour-days'

beforeAll(async () => {
  server = await startServer()
  const { game } = breakwater
  await server.send('PUT', `/api/documents/game/${game.id}`, { base: null, body: game })
  const body = eventOf('A B C D E F G H', { level: 'local' })
  await server.send('PUT', '/api/documents/event/harbour-days', { base: null, body })
})
afterAll(() => server.close())

const schedule = async () => (await server.get(`${at}/matches`)).body
const put = async (matches: unknown[], more: object = {}) =>
  server.send('PUT', `${at}/matches`, { mark: (await schedule()).mark, matches, ...more })
const fresh = (of: ReturnType<typeof match>) => ({
  ...of,
  red: of.red.map((slot) => ({ ...slot, state: 'expected' })),
  blue: of.blue.map((slot) => ({ ...slot, state: 'expected' })),
})
const [one, two, three] = [match(1, 'A B C', 'D E F'), match(2, 'G D A*', 'H B E'), match(3, 'C G F', 'H D B')].map(
  fresh,
)

describe('a schedule', () => {
  test('is looked at, with what is wrong in it, before it is applied', async () => {
    expect(await schedule()).toMatchObject({ matches: [] })
    const broken = fresh(match(4, 'A Z A', 'D E F'))
    const { status, body } = await server.send('POST', `${at}/schedule/preview`, { matches: [one, broken] })
    expect(status).toBe(200)
    expect(
      body.findings.map(({ weight, said }: { weight: string; said: { code: string } }) => [weight, said.code]),
    ).toEqual([
      ['wrong', 'teamTwice'],
      ['wrong', 'unknownTeam'],
    ])
    expect(body.unknownTeams).toEqual(['Z'])
    expect(body.changes.map(({ kind }: { kind: string }) => kind)).toEqual(['added', 'added'])
    const refused = await put([one, broken])
    expect(refused.status).toBe(400)
    expect(refused.body.error).toMatchObject({
      path: ['matches', 1],
      message: expect.stringContaining('team A plays twice'),
    })
    expect((await schedule()).matches).toEqual([])
  })

  test('is applied once, in the order of play, and undone', async () => {
    const { mark } = await schedule()
    const first = await server.send('PUT', `${at}/matches`, { mark, matches: [three, one, two] })
    expect(first.body).toMatchObject({ touched: 3, undo: { put: [], remove: ['q3', 'q1', 'q2'] } })
    // The mark of before no longer holds.
    const late = await server.send('PUT', `${at}/matches`, { mark, matches: [one] })
    expect(late.status).toBe(409)
    expect((await schedule()).matches.map(({ match }: { match: { id: string } }) => match.id)).toEqual([
      'q1',
      'q2',
      'q3',
    ])
    const same = await put([one, two])
    expect(same.body).toMatchObject({ touched: 0, mark: first.body.mark })
    const gone = await put([], { remove: ['q3'] })
    expect(gone.body.undo.put).toEqual([three])
    const back = await put(gone.body.undo.put)
    expect(back.body.touched).toBe(1)
    expect((await schedule()).matches.at(-1)).toMatchObject({ revision: 3, match: three })
  })

  test('that lacks the match which another voids is refused', async () => {
    const again = { ...one!, id: 'q1-2', play: 2, voids: 'q1' }
    await put([again])
    const { status, body } = await put([], { remove: ['q1'] })
    expect(status).toBe(400)
    expect(body.error.path).toEqual(['remove'])
    await put([], { remove: ['q1-2'] })
  })

  test('that puts another team into a place tells which records follow the place and which stay with their number', async () => {
    const record = (sequence: number, identifiedBy: 'number' | 'position') => {
      const [id, device] = [`0192f3a4-0000-7000-8000-00000000000${sequence}`, 'phone-1']
      const way = { id, event: 'harbour-days', device, sequence, scout: 'ada', made: '2031-02-28T10:00Z' }
      const about = {
        format: 1,
        id,
        match: 'q2',
        team: 'G',
        subject: 'robot',
        origin: 'live',
        scout: 'ada',
        device,
        sequence,
      }
      const seat = { alliance: 'red', position: 1 }
      return { ...way, kind: 'observation', seat, body: { ...about, game: 1, identifiedBy } }
    }
    const rows = [record(1, 'position'), record(2, 'position'), record(3, 'number')]
    const sent = await server.send('POST', '/api/records', { device: 'phone-1', unsent: 0, rows })
    expect(sent.body.answers.map(({ outcome }: { outcome: string }) => outcome)).toEqual(['held', 'held', 'held'])
    const swapped = { ...two!, red: two!.red.map((slot) => (slot.team === 'G' ? { ...slot, team: 'F' } : slot)) }
    const { body } = await server.send('POST', `${at}/schedule/preview`, { matches: [swapped], remove: ['q3'] })
    expect(body.changes[0].teams).toEqual([
      { seat: { alliance: 'red', position: 1 }, from: 'G', to: 'F', follow: 2, stay: 1 },
    ])
    expect(body.changes[1]).toMatchObject({ kind: 'removed', records: 0, result: false })
    // Applied, the records are where the preview said.
    await put([swapped])
    const found = (await server.get('/api/records?event=harbour-days')).body.records
    expect(found.map(({ team }: { team: string }) => team)).toEqual(['F', 'F', 'G'])
    await put([two])
  })

  test('keeps in the audit who stood where another team plays now', async () => {
    const swapped = { ...two!, blue: two!.blue.map((slot) => (slot.team === 'H' ? { ...slot, team: 'C' } : slot)) }
    await put([swapped])
    await put([two])
    expect((await schedule()).matches[1]).toMatchObject({ revision: 5, match: two })
  })
})

describe('results', () => {
  const entry = (id: string, points: [number, number], base = 0, matchRevision = 1, more: object = {}) => ({
    match: id,
    base,
    matchRevision,
    result: result(id, points),
    ...more,
  })
  const enter = (...results: unknown[]) => server.send('PUT', `${at}/results`, { results })

  test('are looked at, entered, corrected and taken back, each as a further state', async () => {
    const looked = await server.send('POST', `${at}/results/preview`, {
      results: [
        result('q1', [40, 60]),
        result('q9', [1, 2]),
        { ...result('q2', [9, 9]), red: { points: { total: 9, autonomous: 10 } } },
      ],
    })
    expect(looked.body.findings.map(({ said }: { said: { code: string } }) => said.code)).toEqual([
      'noMatch',
      'partsAboveTotal',
    ])
    expect(looked.body).toMatchObject({ fresh: 2, corrected: [], same: 0 })
    expect(looked.body.entries.map(({ match, base }: { match: string; base: number }) => [match, base])).toEqual([
      ['q1', 0],
      ['q2', 0],
    ])
    expect((await enter(entry('q1', [40, 60]))).body).toMatchObject([{ match: 'q1', revision: 1 }])
    // Sent again, as when its answer got lost.
    expect((await enter(entry('q1', [40, 60]))).body).toMatchObject([{ match: 'q1', revision: 1 }])
    expect((await enter(entry('q1', [41, 60]))).status).toBe(409)
    expect((await enter(entry('q1', [41, 60], 1))).body).toMatchObject([{ revision: 2 }])
    expect((await enter({ ...entry('q1', [0, 0], 2), result: null })).body).toMatchObject([
      { revision: 3, result: null },
    ])
    const { body } = await server.get(`${at}/results/q1`)
    expect(
      body.map((each: { result: { red: { points: { total: number } } } | null }) => each.result?.red.points.total),
    ).toEqual([undefined, 41, 40])
  })

  test('are refused together when one of them is stale, wrong or about another match', async () => {
    const stale = await enter(entry('q2', [50, 50], 0, 5), entry('q3', [80, 30], 7, 3))
    expect(stale.status).toBe(409)
    const { body } = await server.get(`${at}/results`)
    expect(body.map(({ match }: { match: string }) => match)).toEqual(['q1'])
    const strange = { ...entry('q2', [1, 1], 0, 5), result: { ...result('q2', [1, 1], { bonuses: [['moon'], []] }) } }
    expect((await enter(strange)).body.error).toMatchObject({
      path: ['results', 0],
      message: expect.stringContaining('moon'),
    })
    expect((await enter({ ...entry('q2', [1, 1], 0, 5), result: result('q3', [1, 1]) })).status).toBe(400)
    expect((await enter(entry('q7', [1, 1]))).status).toBe(400)
  })

  test('bring along who was absent or disqualified, and rank the teams', async () => {
    await enter(entry('q1', [40, 80], 3))
    const states = { red: ['played', 'played', 'played'], blue: ['played', 'absent', 'played'] }
    expect((await enter(entry('q2', [50, 50], 0, 5, { states }))).status).toBe(200)
    expect((await schedule()).matches[1].match.blue[1]).toMatchObject({ team: 'B', state: 'absent' })
    const { body } = await server.get(`${at}/ranking?seed=5`)
    expect(body).toMatchObject({ per: 'match', seed: 5, counted: 2, waiting: 1 })
    // D, E and F won the first match; D and E tied in the second: (3 + 1) / 2.
    const teams = body.rows.slice(1, 3).map(({ team }: { team: string }) => team)
    expect(teams.sort()).toEqual(['D', 'E'])
    expect(body.rows[0]).toMatchObject({ team: 'F', values: [3, 80, 0, 0] })
    expect(body.rows.find(({ team }: { team: string }) => team === 'A')).toMatchObject({ played: 1, apart: 1 })
  })
})

test('an event that is not there is said so', async () => {
  for (const path of ['matches', 'results', 'assignments', 'ranking'])
    expect((await server.get(`/api/events/none/${path}`)).status).toBe(404)
})

describe('assignments', () => {
  let lead: Member
  let scouts: Member[]
  const now = async (who: Member = lead) => (await who.get(`${at}/assignments`)).body

  beforeAll(async () => {
    lead = await claim(server)
    scouts = []
    for (let number = 1; number <= 7; number++)
      scouts.push(await join(server, lead, { role: 'scout', nickname: `Scout ${number}` }))
  })

  test('are shared out among people who are here, looked at and then applied', async () => {
    const asked = { people: scouts.map(({ id }) => id), longest: 4, rest: 1 }
    const strange = await lead.send('POST', `${at}/assignments/preview`, { ...asked, people: ['nobody'] })
    expect(strange.body.error.message).toBe('There is nobody here with the id “nobody”')
    const { body } = await lead.send('POST', `${at}/assignments/preview`, asked)
    // Matches 1 and 2 have results: of three matches one is open.
    expect(body.assignments.map(({ match }: { match: string }) => match)).toEqual(Array.from({ length: 6 }, () => 'q3'))
    expect(body).toMatchObject({ broken: [], empty: 0 })
    const { assignments, mark } = body
    const applied = await lead.send('PUT', `${at}/assignments`, { assignments, mark })
    expect(applied.status).toBe(200)
    expect((await lead.send('PUT', `${at}/assignments`, { assignments: [], mark })).status).toBe(409)
    const twice = [assignments[0], { ...assignments[1], person: assignments[0].person }]
    const refused = await lead.send('PUT', `${at}/assignments`, { assignments: twice, mark: applied.body.mark })
    expect(refused.body.error).toMatchObject({ code: 'malformed', path: ['assignments', 0] })
    expect((await now(scouts[0])).people).toContainEqual({ id: scouts[0]!.id, nickname: 'Scout 1', role: 'scout' })
  })

  test('change hands by one tap of a scout, who takes a seat for nobody else', async () => {
    const { assignments } = await now()
    const [first, second] = assignments as { seat: object; person: string }[]
    const me = scouts.find(({ id }) => id === first!.person)!
    const asked = { match: 'q3', seat: second!.seat }
    const { status, body } = await me.send('POST', `/api/events/harbour-days/seat`, asked)
    expect(status).toBe(200)
    // Who had the seat gets the one that its taker had.
    expect(body).toEqual([
      { match: 'q3', seat: second!.seat, person: me.id },
      { match: 'q3', seat: first!.seat, person: second!.person },
    ])
    expect((await me.send('POST', `/api/events/harbour-days/seat`, { ...asked, person: second!.person })).status).toBe(
      403,
    )
    const idle = scouts.find(({ id }) => !assignments.some(({ person }: { person: string }) => person === id))!
    const taken = await idle.send('POST', `/api/events/harbour-days/seat`, asked)
    expect(taken.body).toEqual([{ match: 'q3', seat: second!.seat, person: idle.id }])
    expect((await now()).assignments.filter(({ person }: { person: string }) => person === me.id)).toEqual([])
    expect((await me.send('PUT', `${at}/assignments`, { mark: (await now()).mark, assignments: [] })).status).toBe(403)
  })

  test('and all else that changed an event stand in the audit, a team that stood elsewhere before among it', async () => {
    const { body } = await lead.get('/api/audit?limit=100')
    const of = (action: string) => body.filter((entry: { action: string }) => entry.action === action)
    expect(of('event.assignments.take')).toHaveLength(2)
    expect(of('event.assignments.take')[0].detail).toMatchObject({ match: 'q3', from: expect.any(String) })
    expect(of('event.results.enter').length).toBeGreaterThan(3)
    const swaps = of('event.schedule.edit').flatMap(
      ({ detail }: { detail: { substituted: object[] } }) => detail.substituted,
    )
    expect(swaps).toContainEqual({ match: 'q2', alliance: 'blue', position: 1, from: 'H', to: 'C' })
  })
})
