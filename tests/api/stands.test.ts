import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { game } from '../../seed/game.ts'
import { breakwater } from '../../seed/index.ts'
import { type Server, startServer } from './server.ts'

let server: Server
const event = {
  format: 1,
  id: 'spring',
  name: 'Spring tide',
  game: 'breakwater',
  teams: [{ team: '90001' }, { team: '90002', name: 'Gulls' }],
  startsOn: '2026-11-28',
}

beforeAll(async () => {
  server = await startServer()
  await server.send('PUT', '/api/documents/game/breakwater', { base: null, body: game })
  await server.send('PUT', '/api/documents/event/spring', { base: null, body: event })
})
afterAll(() => server.close())

describe('what a phone in the stands takes along', () => {
  test('is the event with the game that it is played by, and a mark', async () => {
    const { status, body } = await server.get('/api/stands/spring')
    expect(status).toBe(200)
    expect(body.event).toEqual(event)
    expect(body.game).toEqual({ revision: 1, body: game })
    expect(body.mark).toMatch(/^[\w-]{22}$/)
  })

  test('holds the schedule, with robots of a match that has a result as played, and who watches whom', async () => {
    const slot = (team: string) => ({ team, counts: true, state: 'expected' })
    const match = (number: number) => ({
      id: `q${number}`,
      phase: 'qualification',
      number,
      play: 1,
      red: ['90001', '90002', '90003'].map(slot),
      blue: ['90004', '90005', '90006'].map(slot),
    })
    const teams = [1, 2, 3, 4, 5, 6].map((number) => ({ team: `9000${number}` }))
    await server.send('PUT', '/api/documents/event/spring', { base: 1, body: { ...event, teams } })
    const at = '/api/events/spring'
    const { body: schedule } = await server.get(`${at}/matches`)
    const put = await server.send('PUT', `${at}/matches`, { mark: schedule.mark, matches: [match(1), match(2)] })
    expect(put.status).toBe(200)
    const side = { points: { total: 12 } }
    const result = { match: 'q1', base: 0, matchRevision: 1, result: { match: 'q1', red: side, blue: side } }
    expect((await server.send('PUT', `${at}/results`, { results: [result] })).status).toBe(200)
    const { body: pack } = await server.get('/api/stands/spring')
    expect(pack.matches.map(({ id }: { id: string }) => id)).toEqual(['q1', 'q2'])
    expect(pack.matches[0].red.map(({ state }: { state: string }) => state)).toEqual(['played', 'played', 'played'])
    expect(pack.matches[1]).toEqual(match(2))
    expect(pack.assignments).toEqual([])
    expect(pack.people).toEqual([])
  })

  test('is only the mark for a phone that has it already, until something changes', async () => {
    const { body: first } = await server.get('/api/stands/spring')
    const { body: same } = await server.get(`/api/stands/spring?since=${first.mark}`)
    expect(same).toEqual({ same: true, mark: first.mark, serverTime: same.serverTime })
    await server.send('PUT', '/api/documents/game/breakwater', {
      base: 1,
      body: { ...game, name: 'Breakwater, mended' },
    })
    const { body: next } = await server.get(`/api/stands/spring?since=${first.mark}`)
    expect(next.game.revision).toBe(2)
    expect(next.mark).not.toBe(first.mark)
  })

  test('is a sentence where there is no such event', async () => {
    const { status, body } = await server.get('/api/stands/autumn')
    expect(status).toBe(404)
    expect(body.error.message).toContain('autumn')
  })

  test('the events to choose from are listed, newest first', async () => {
    await server.send('PUT', '/api/documents/event/older', {
      base: null,
      body: { ...event, id: 'older', name: 'Neap', startsOn: '2026-10-01' },
    })
    const { body } = await server.get('/api/stands')
    expect(body).toEqual([
      { id: 'spring', name: 'Spring tide', startsOn: '2026-11-28' },
      { id: 'older', name: 'Neap', startsOn: '2026-10-01' },
    ])
  })
})

test('a match to train on has six robots that move, and what happened lies within it', async () => {
  expect((await server.get('/api/stands/spring/training?seed=1')).status).toBe(422)
  const { designs, options } = breakwater
  const record = options[0]!
  const design = designs.find(({ robot }) => robot.id === record.design)!
  await server.send('PUT', `/api/documents/design/${design.robot.id}`, { base: null, body: design })
  await server.send('PUT', `/api/documents/option/${record.option.id}`, { base: null, body: record })
  const { status, body } = await server.get('/api/stands/spring/training?seed=1')
  expect(status).toBe(200)
  expect(body.robots).toHaveLength(6)
  const whole = game.clock.auto + game.clock.pause + game.clock.teleop
  for (const { track, happened } of body.robots) {
    const times = track.map(([time]: number[]) => time)
    expect(times).toEqual([...times].sort((a: number, b: number) => a - b))
    for (const { elapsed } of happened) expect(elapsed >= 0 && elapsed <= whole + 1e-6).toBe(true)
  }
  const kinds = new Set(
    body.robots.flatMap((robot: { happened: { what: string }[] }) => robot.happened.map(({ what }) => what)),
  )
  expect(kinds).toContain('scored')
  expect(kinds).toContain('collected')
})
