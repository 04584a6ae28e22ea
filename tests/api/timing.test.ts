import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { breakwater } from '../../seed/index.ts'
import type { TimingRecord } from '../../src/model/documents/timing.ts'
import { type Server, startServer } from './server.ts'

let server: Server

beforeEach(async () => {
  server = await startServer()
  await server.send('PUT', '/api/documents/game/breakwater', { base: null, body: breakwater.game })
  const design = breakwater.designs.find(({ robot }) => robot.id === 'shearwater')
  await server.send('PUT', '/api/documents/design/shearwater', { base: null, body: design })
})

afterEach(() => server.close())

const trial = (id: string, seconds = 1.25, struck: string | null = null) => ({
  id,
  seconds,
  at: '2026-11-25T17:00:00.000Z',
  struck,
})
const timing = (more: object = {}): TimingRecord => ({
  format: 1,
  id: 'shearwater.score.gantry.0.stage.hook-on',
  name: 'Shearwater: Score at Gantry, Hook the buoy on',
  design: 'shearwater',
  leg: { kind: 'score', goal: 'gantry', entry: 0 },
  part: { kind: 'stage', stage: 'hook-on' },
  trials: [trial('a'), trial('b', 7.5, 'The press came late')],
  ...more,
})
const address = '/api/documents/timing/shearwater.score.gantry.0.stage.hook-on'
const put = (body: unknown, base: number | null = null) => server.send('PUT', address, { base, body })

describe('A record of timings', () => {
  test('is kept with what was struck and why, and a second phone is told what was saved in between', async () => {
    expect((await put(timing())).body.saved).toMatchObject({ revision: 1, body: timing() })
    const late = await put(timing({ trials: [trial('c')] }))
    expect(late.status).toBe(409)
    expect(late.body.current.body.trials).toHaveLength(2)
    expect((await server.get(address)).body.body.trials[1].struck).toBe('The press came late')
  })

  test('may be of a drive between two spots', async () => {
    expect((await put(timing({ part: { kind: 'drive', from: 'quay', to: 'g1' } }))).status).toBe(200)
  })

  test('may be of a stage that the design no longer has: what was measured was measured', async () => {
    expect((await put(timing({ part: { kind: 'stage', stage: 'gone' } }))).status).toBe(200)
  })

  test.each([
    ['time', { trials: [trial('a', -1)] }, 'body/trials/0/seconds', 'seconds must be at least 0, got -1'],
    ['time', { trials: [trial('a', 601)] }, 'body/trials/0/seconds', 'seconds must be at most 600, got 601'],
    ['reason', { trials: [trial('a', 1, '  ')] }, 'body/trials/0/struck', 'struck must not be empty'],
    ['moment', { trials: [{ ...trial('a'), at: 'noon' }] }, 'body/trials/0/at', 'at is not written as expected'],
    ['id twice', { trials: [trial('a'), trial('a')] }, 'body/trials/1/id', 'two measured times with the id “a”'],
    ['design', { design: 'moon' }, 'body/design', 'There is no design with the id “moon”'],
    ['part', { part: { kind: 'nap' } }, 'body/part/kind', '"nap"'],
    ['end', { part: { kind: 'drive', from: 'quay' } }, 'body/part/to', 'to is missing'],
    ['surprise', { surprise: 1 }, 'body/surprise', 'not a field that is known'],
  ])('with a wrong %s is refused with the path and a sentence', async (_, changes, path, words) => {
    const { status, body } = await put(timing(changes))
    expect(status).toBe(400)
    expect(body.error.path.join('/')).toBe(path)
    expect(body.error.message).toContain(words)
    expect((await server.get(address)).status).toBe(404)
  })
})
