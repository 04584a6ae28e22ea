import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { season } from '../../src/model/match/scores/index.ts'
import { harbour, ternBest } from '../model/documents/harbour.ts'
import { type Server, startServer } from './server.ts'

let server: Server
beforeAll(async () => {
  server = await startServer({ pool: { threads: 2 } })
})
afterAll(() => server.close())

const six = ['a', 'b', 'c', 'd', 'e', 'f']
const request = {
  game: harbour(),
  level: 'local',
  teams: six.map((team) => ({ team, draws: [ternBest(), { ...ternBest(), id: 'other' }] })),
  matches: [
    { id: 'one', ours: six.slice(0, 3), theirs: six.slice(3) },
    { id: 'two', ours: ['d', 'b', 'a'], theirs: ['c', 'e', 'f'] },
  ],
  seasons: 400,
  seed: 3,
  replicates: 1000,
  precision: 0.05,
}
const ask = (change: object = {}) => server.send('POST', '/api/compute/season', { ...request, ...change })

describe('POST /api/compute/season', () => {
  test('threads answer what one does, to the last bit', { timeout: 60_000 }, async () => {
    const { status, body } = await ask()
    expect(status).toBe(200)
    expect(body).toEqual(JSON.parse(JSON.stringify(season(request))))
    const [one] = body.matches
    expect(one.win + one.tie + one.loss).toBeCloseTo(1, 12)
    expect(body.teams.map(({ matches }: { matches: number }) => matches)).toEqual([2, 2, 2, 2, 2, 2])
  })

  test('teams and matches that do not fit each other are refused with their place', async () => {
    const [one, two] = request.matches
    const refusals: [object, (string | number)[]][] = [
      [{ matches: [one, { ...two, theirs: ['c', 'moon', 'f'] }] }, ['matches', 1, 'theirs', 1]],
      [{ matches: [{ ...one, theirs: ['d', 'a', 'f'] }] }, ['matches', 0, 'theirs', 1]],
      [{ teams: [...request.teams, request.teams[0]] }, ['teams', 6, 'team']],
      [{ teams: [...request.teams.slice(0, 5), { team: 'f', draws: [ternBest()] }] }, ['teams', 5, 'draws']],
    ]
    for (const [change, path] of refusals) {
      const { status, body } = await ask(change)
      expect(status).toBe(400)
      expect(body.error.path).toEqual(path)
    }
    const lost = { ...ternBest(), start: 'moon' }
    const { body } = await ask({ teams: [...request.teams.slice(0, 5), { team: 'f', draws: [ternBest(), lost] }] })
    expect(body.error.path.slice(0, 4)).toEqual(['teams', 5, 'draws', 1])
  })
})
