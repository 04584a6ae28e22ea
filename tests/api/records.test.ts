import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { ApiError } from '../../src/api/errors.ts'
import { DeviceLimit } from '../../src/api/records/limit.ts'
import { hashOf } from '../../src/api/records/rows.ts'
import { canonicalJson, type Row } from '../../src/model/scouting/index.ts'
import { eventId, qualification, seen, teams, uuidOf } from '../faults/harbourEvent.ts'
import { openEvent } from '../faults/openEvent.ts'
import { type Server, startServer } from './server.ts'

let server: Server

beforeAll(async () => {
  server = await startServer()
  await openEvent(server.url)
  const { mark } = (await server.get(`/api/events/${eventId}/matches`)).body
  const put = await server.send('PUT', `/api/events/${eventId}/matches`, {
    matches: [qualification(1), qualification(2)],
    mark,
  })
  expect(put.body.error?.message).toBeUndefined()
})

afterAll(() => server.close())

const send = (rows: unknown[], device = 'phone-1') => server.send('POST', '/api/records', { device, unsent: 0, rows })
const address = (path: string) => `/api/events/${eventId}/${path}`
const all = async () => (await server.get(`/api/records?event=${eventId}`)).body.records
const inForce = async () => {
  const records = await all()
  const replaced = new Set(records.map(({ replaces }: { replaces: string | null }) => replaces))
  return records.filter(({ row }: { row: Row }) => !replaced.has(row.id))
}
/** In qualification 1, by red 1, who is team 90001. */
const ofFirst = (device: number, sequence: number, change = {}) =>
  seen(device, sequence, { match: 'q1', team: teams[0]!, scout: `scout-${device}`, ...change })

describe('A batch of rows', () => {
  test('is held once, however often it is sent, and its hash is that of its content', async () => {
    const rows = [seen(1, 1), seen(1, 2)]
    expect((await send(rows)).body.answers).toEqual(rows.map(({ id }) => ({ id, outcome: 'held', again: false })))
    // The order of keys is not content.
    const turned = rows.map((row) => Object.fromEntries(Object.entries(row).reverse()))
    const again = await send(turned)
    expect(again.body.answers).toEqual(rows.map(({ id }) => ({ id, outcome: 'held', again: true })))
    expect(again.body.receipt).toMatchObject({ held: 2, quarantined: 0 })
    const [kept] = await all()
    expect(kept.hash).toBe(hashOf(canonicalJson(rows[0])))
    expect(kept.row).toEqual(rows[0])
  })

  test('with a row that can not be read is taken but for that row, which is answered in a sentence', async () => {
    const good = seen(2, 1)
    const { status, body } = await send([
      { ...seen(2, 2), scout: 7 },
      good,
      'nothing',
      { ...seen(2, 3), device: 'other' },
    ])
    expect(status).toBe(200)
    expect(body.answers.map(({ outcome }: { outcome: string }) => outcome)).toEqual([
      'refused',
      'held',
      'refused',
      'refused',
    ])
    expect(body.answers[0].why).toMatch(/scout must be text, got 7/)
    expect(body.answers[3].why).toMatch(/another device/)
  })

  test.each([
    ['no object', []],
    ['no device', { unsent: 0, rows: [] }],
    ['more rows than are taken', { device: 'a', unsent: 0, rows: Array.from({ length: 201 }, () => 1) }],
    ['a field that is not known', { device: 'a', unsent: 0, rows: [], extra: 1 }],
  ])('with %s around it is refused as a whole', async (_, body) => {
    expect((await server.send('POST', '/api/records', body)).status).toBe(400)
  })

  test('whose ids are taken by other content is kept apart beside it, once', async () => {
    const ours = seen(3, 1)
    const theirs = { ...ours, made: '2026-11-27T11:00:00.000Z' }
    await send([ours], 'phone-3')
    for (const _ of [1, 2]) expect((await send([theirs], 'phone-3')).body.answers[0].outcome).toBe('quarantined')
    expect((await send([ours], 'phone-3')).body).toMatchObject({
      answers: [{ outcome: 'held', again: true }],
      receipt: { held: 1, quarantined: 1 },
    })
  })

  test('of an event that is not known is kept apart too', async () => {
    const { body } = await send([{ ...seen(4, 1), event: 'elsewhere' }], 'phone-4')
    expect(body.answers[0]).toMatchObject({
      outcome: 'quarantined',
      why: expect.stringMatching(/does not know the event/),
    })
  })

  test('is refused for a while from a device that sends without end, and from no other', () => {
    const limit = new DeviceLimit(3)
    for (const _ of [1, 2, 3]) limit.count('wild', 1000)
    expect(() => limit.count('wild', 31_000)).toThrowError(ApiError)
    limit.count('tame', 31_000)
    limit.count('wild', 61_000)
  })
})

test('A record by place follows a corrected schedule, one by number stays', async () => {
  const seat = { alliance: 'red', position: 2 } as const
  const byPlace = { ...seen(5, 1, { match: 'q2', team: teams[7]!, identifiedBy: 'position' }), seat }
  const byNumber = { ...seen(5, 2, { match: 'q2', team: teams[7]! }), seat }
  await send([byPlace, byNumber], 'phone-5')
  const teamsOf = async () =>
    (await all()).filter(({ row }: { row: Row }) => row.device === 'phone-5').map(({ team }: { team: string }) => team)
  expect(await teamsOf()).toEqual([teams[7], teams[7]])
  const { mark } = (await server.get(address('matches'))).body
  const corrected = qualification(2)
  corrected.red[1] = { ...corrected.red[1], team: teams[20]! }
  const put = await server.send('PUT', address('matches'), { matches: [qualification(1), corrected], mark })
  expect(put.status).toBe(200)
  expect(await teamsOf()).toEqual([teams[20], teams[7]])
})

describe('A lead', () => {
  test('corrects by a further record, and learns when somebody did so before', async () => {
    const row = ofFirst(6, 1)
    await send([row], 'phone-6')
    const correction = {
      record: row.id,
      changes: { team: teams[3], note: 'blue 1' },
      clear: ['finish'],
      reason: 'Wrong robot',
    }
    const { status, body } = await server.send('POST', address('corrections'), correction)
    expect(status).toBe(200)
    const kept = (await all()).find((each: { row: Row }) => each.row.id === body.added[0])
    expect(kept).toMatchObject({ replaces: row.id, team: teams[3], row: { reason: 'Wrong robot', scout: 'scout-6' } })
    expect(kept.row.body).not.toHaveProperty('finish')
    expect((await all()).some((each: { row: Row }) => each.row.id === row.id)).toBe(true)
    expect((await server.send('POST', address('corrections'), correction)).status).toBe(409)
  })

  test('swaps two robots in one action, which done again is undone', async () => {
    const rows = [ofFirst(7, 1, { match: 'q1', team: teams[1]! }), ofFirst(8, 1, { match: 'q1', team: teams[2]! })]
    await send(rows, 'phone-7')
    const swap = { match: 'q1', records: rows.map(({ id }) => id), reason: 'Bumpers alike' }
    const answer = await server.send('POST', address('swaps'), swap)
    expect(answer.body.error?.message).toBeUndefined()
    const pair = async () =>
      (await inForce())
        .filter(({ row }: { row: Row }) => row.scout === 'scout-7' || row.scout === 'scout-8')
        .map(({ row, team }: { row: Row; team: string }) => [row.scout, team])
        .sort()
    expect(await pair()).toEqual([
      ['scout-7', teams[2]],
      ['scout-8', teams[1]],
    ])
    // The same request sent twice, because its answer was lost, does not swap back.
    expect((await server.send('POST', address('swaps'), swap)).status).toBe(409)
    await server.send('POST', address('swaps'), { ...swap, records: answer.body.added, reason: 'Undone' })
    expect(await pair()).toEqual([
      ['scout-7', teams[1]],
      ['scout-8', teams[2]],
    ])
  })

  test('decides over what was kept apart: theirs becomes a correction of ours', async () => {
    const apart = (await server.get(address('quarantine'))).body
    const other = apart.find(({ row }: { row: Row }) => row.device === 'phone-3')
    expect(other.ours.made).not.toBe(other.row.made)
    const path = address('quarantine')
    const { arrival } = other
    const { body } = await server.send('POST', path, {
      arrival,
      resolution: 'replaced',
      reason: 'The second is complete',
    })
    const kept = (await all()).find((each: { row: Row }) => each.row.id === body.added[0])
    expect(kept).toMatchObject({ replaces: uuidOf(3, 1), row: { made: other.row.made } })
    expect((await server.send('POST', path, { arrival, resolution: 'kept' })).status).toBe(409)
    const unknown = apart.find(({ row }: { row: Row }) => row.device === 'phone-4')
    await server.send('POST', path, { arrival: unknown.arrival, resolution: 'setAside' })
    expect((await server.get(address('board'))).body.quarantined).toBe(0)
  })

  test('sees who was to watch, what came, and what can not be', async () => {
    const wrong = ofFirst(9, 1, { absent: true, team: teams[0]!, scout: 'scout-9' })
    await send([wrong], 'phone-9')
    const { body } = await server.get(address('board'))
    expect(body.matches.map(({ match, played }: { match: string; played: boolean }) => [match, played])).toEqual([
      ['q1', true],
      ['q2', true],
    ])
    const [first] = body.matches[0].seats
    expect(first).toMatchObject({ team: teams[0], state: 'received', records: [wrong.id] })
    expect(body.contradictions).toContainEqual({
      kind: 'absentButSeen',
      records: [wrong.id],
      match: 'q1',
      team: teams[0],
    })
    expect(body.corrections.length).toBeGreaterThan(3)
  })

  test('holds a rehearsal', async () => {
    const started = (await server.send('POST', address('drills'), {})).body
    expect((await server.send('POST', address('drills'), {})).body.id).toBe(started.id)
    expect((await server.get(address('drill'))).body.drill.id).toBe(started.id)
    await server.send('POST', address(`drills/${started.id}/end`), {})
    expect((await server.get(address('drill'))).body.drill).toBeNull()
    expect((await server.send('POST', address('drills/none/end'), {})).status).toBe(404)
  })

  test('lets one of several records count, whatever is corrected in it, and all again', async () => {
    const other = ofFirst(10, 1, { scout: 'scout-10' })
    await send([other], 'phone-10')
    const counting = async () =>
      (await server.get(address('observations?match=q1'))).body
        .filter(({ team }: { team: string }) => team === teams[0])
        .map(({ row, counts }: { row: Row; counts: boolean }) => [row.id, counts])
    const told = async () =>
      (await server.get(address('board'))).body.contradictions.filter(({ records }: { records: string[] }) =>
        records.includes(uuidOf(9, 1)),
      )
    expect(await counting()).toEqual([
      [uuidOf(9, 1), true],
      [other.id, true],
    ])
    expect(await told()).not.toEqual([])
    const choice = { match: 'q1', team: teams[0], record: other.id, reason: 'Sat nearer' }
    expect((await server.send('POST', address('choices'), choice)).status).toBe(200)
    expect((await server.get(address('choices'))).body).toMatchObject([choice])
    expect(await counting()).toEqual([
      [uuidOf(9, 1), false],
      [other.id, true],
    ])
    // What does not count contradicts nothing; and who chose a record chose its correction.
    expect(await told()).toEqual([])
    const correction = { record: other.id, changes: { note: 'Seen again' }, reason: 'Video' }
    const [corrected] = (await server.send('POST', address('corrections'), correction)).body.added
    expect(await counting()).toEqual([
      [uuidOf(9, 1), false],
      [corrected, true],
    ])
    expect((await server.get(address('board'))).body.matches[0].seats[0].chosen).toBe(corrected)
    await server.send('POST', address('choices'), { ...choice, record: null })
    expect((await counting()).map(([, counts]: [string, boolean]) => counts)).toEqual([true, true])
    expect((await server.send('POST', address('choices'), { ...choice, record: uuidOf(99, 1) })).status).toBe(404)
  })

  test('sees at once what a corrected schedule changes, though what was worked out is kept', async () => {
    const board = async () => (await server.get(address('board'))).body
    const before = await board()
    expect(await board()).toEqual(before)
    const { matches, mark } = (await server.get(address('matches'))).body
    const [first] = matches.map(({ match }: { match: unknown }) => match)
    const turned = { ...first, red: [first.red[1], first.red[0], first.red[2]] }
    await server.send('PUT', address('matches'), { matches: [turned], mark })
    const [seat] = (await board()).matches[0].seats
    expect([seat.team, before.matches[0].seats[0].team]).toEqual([teams[1], teams[0]])
    expect(seat.records).toEqual(before.matches[0].seats[1].records)
  })
})

test('Records are asked for by kind, in one way or the other', async () => {
  const way = { event: eventId, device: 'phone-11', scout: 'scout-11', made: '2026-11-27T10:00:00.000Z' }
  const photo = { id: uuidOf(11, 1), type: 'image/png', data: 'AAAA' }
  const visit = { team: teams[4], at: way.made, claims: {}, photos: [photo.id] }
  const rows = [
    { ...way, id: photo.id, sequence: 1, kind: 'photo', body: photo },
    { ...way, id: uuidOf(11, 2), sequence: 2, kind: 'visit', body: visit },
    { ...way, id: uuidOf(11, 3), sequence: 3, kind: 'change', body: { team: teams[4], afterMatch: null } },
  ]
  await send(rows, 'phone-11')
  const kindsIn = async (query: string) =>
    (await server.get(`/api/records?event=${eventId}&${query}`)).body.records.map(({ row }: { row: Row }) => row.kind)
  expect(await kindsIn('kinds=visit,change')).toEqual(['visit', 'change'])
  expect(await kindsIn('kinds=photo&kinds=visit')).toEqual(['photo', 'visit'])
  const { status, body } = await server.get(`/api/records?event=${eventId}&kinds=visit,nothing`)
  expect([status, body.error.path]).toEqual([400, ['kinds', 1]])
})

test('Who looks on is told at once that records came, and of this event only', async () => {
  const stop = new AbortController()
  const response = await fetch(server.url + address('live'), { signal: stop.signal })
  expect(response.headers.get('content-type')).toMatch(/^text\/event-stream/)
  const reader = response.body!.pipeThrough(new TextDecoderStream()).getReader()
  await reader.read()
  await send([seen(20, 1)], 'phone-20')
  let told = ''
  while (!told.includes('\n\n')) told += (await reader.read()).value
  expect(told).toBe(`event: records\ndata: {"event":"${eventId}","what":"records"}\n\n`)
  stop.abort()
})

describe('A lead decides anew over what was kept apart', () => {
  const path = address('quarantine')
  const apartOf = async (device: string) =>
    (await server.get(path)).body.find(({ row }: { row: Row }) => row.device === device)
  const decide = async (device: string, body: object) => {
    const { arrival } = await apartOf(device)
    return server.send('POST', path, { arrival, ...body })
  }
  const counting = async (device: string) =>
    (await inForce()).filter(({ row }: { row: Row }) => row.device === device).map(({ row }: { row: Row }) => row)

  test('where something came first: it counts again, then theirs once more, and each step is a record', async () => {
    const ours = ofFirst(31, 1, { note: 'ours' })
    const theirs = ofFirst(31, 1, { note: 'theirs' })
    await send([ours, theirs], 'phone-31')
    await decide('phone-31', { resolution: 'kept' })
    // Whoever does not know of the first decision, or of another one, is told so.
    expect((await decide('phone-31', { resolution: 'replaced' })).status).toBe(409)
    expect((await decide('phone-31', { resolution: 'replaced', before: 'setAside' })).status).toBe(409)
    const notes = async () => (await counting('phone-31')).map((row: Row) => (row.body as { note?: string }).note)
    expect(await notes()).toEqual(['ours'])
    await decide('phone-31', { resolution: 'replaced', before: 'kept', reason: 'The later one is complete' })
    expect(await notes()).toEqual(['theirs'])
    await decide('phone-31', { resolution: 'setAside', before: 'replaced', reason: 'It was another robot' })
    expect(await notes()).toEqual(['ours'])
    const [back] = await counting('phone-31')
    expect(back).toMatchObject({ reason: 'It was another robot', made: ours.made })
    await decide('phone-31', { resolution: 'replaced', before: 'setAside' })
    expect(await notes()).toEqual(['theirs'])
    expect((await all()).filter(({ row }: { row: Row }) => row.device === 'phone-31')).toHaveLength(4)
    expect(await apartOf('phone-31')).toMatchObject({ resolution: 'replaced', ours: { id: ours.id } })
  })

  test('where nothing came first: it is taken out again, counts nowhere, and can come back', async () => {
    const lost = { ...ofFirst(32, 1, { note: 'lost' }), event: 'nowhere' }
    await send([lost], 'phone-32')
    await decide('phone-32', { resolution: 'replaced' })
    const taken = await counting('phone-32')
    expect(taken).toMatchObject([{ id: lost.id, event: eventId }])
    expect((await apartOf('phone-32')).ours).toBeNull()
    await decide('phone-32', { resolution: 'setAside', before: 'replaced', reason: 'Not of this event' })
    expect(await counting('phone-32')).toMatchObject([{ kind: 'withdrawal', body: { record: lost.id } }])
    const seenIn = async () =>
      (await server.get(address('observations?match=q1'))).body.map(({ row }: { row: Row }) => row.device)
    expect(await seenIn()).not.toContain('phone-32')
    const { corrections } = (await server.get(address('board'))).body
    expect(corrections.at(-1)).toMatchObject({ match: 'q1', team: teams[0], reason: 'Not of this event' })
    await decide('phone-32', { resolution: 'replaced', before: 'setAside' })
    expect(await seenIn()).toContain('phone-32')
    const [again] = await counting('phone-32')
    expect(again).toMatchObject({ kind: 'observation', body: { note: 'lost' } })
  })

  test('what was taken after it stays, and what was taken before it comes back', async () => {
    const [ours, second, third] = ['ours', 'second', 'third'].map((note) => ofFirst(34, 1, { note }))
    await send([ours, second, third], 'phone-34')
    const apart = (await server.get(path)).body.filter(({ row }: { row: Row }) => row.device === 'phone-34')
    const [before, after] = apart.map(({ arrival }: { arrival: number }) => arrival)
    const resolve = (arrival: number, resolution: string, before?: string) =>
      server.send('POST', path, { arrival, resolution, ...(before && { before }) })
    const notes = async () => (await counting('phone-34')).map((row: Row) => (row.body as { note?: string }).note)
    await resolve(before, 'replaced')
    await resolve(after, 'replaced')
    expect(await notes()).toEqual(['third'])
    expect((await resolve(before, 'kept', 'replaced')).body).toEqual({ added: [] })
    expect(await notes()).toEqual(['third'])
    await resolve(before, 'replaced', 'kept')
    expect(await notes()).toEqual(['second'])
    await resolve(before, 'setAside', 'replaced')
    expect(await notes()).toEqual(['third'])
    // Neither is taken any more.
    await resolve(after, 'kept', 'replaced')
    expect(await notes()).toEqual(['ours'])
  })

  test('a record that was corrected after it was taken goes with it', async () => {
    const [ours, theirs] = ['ours', 'theirs'].map((note) => ofFirst(33, 1, { note }))
    await send([ours, theirs], 'phone-33')
    const { body } = await decide('phone-33', { resolution: 'replaced' })
    const correction = { record: body.added[0], changes: { note: 'theirs, corrected' }, reason: 'Typing' }
    expect((await server.send('POST', address('corrections'), correction)).status).toBe(200)
    await decide('phone-33', { resolution: 'kept', before: 'replaced' })
    const found = (await inForce()).filter(({ row }: { row: Row }) => row.scout === 'scout-33')
    expect(found.map(({ row }: { row: Row }) => (row.body as { note?: string }).note)).toEqual(['ours'])
  })
})
