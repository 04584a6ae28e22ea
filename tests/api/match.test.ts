import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { Game, Option } from '../../src/model/documents/index.ts'
import { simulate } from '../../src/model/match/index.ts'
import { harbour, ternBest } from '../model/documents/harbour.ts'
import caseFile from '../reference/reference-breakwater.json' with { type: 'json' }
import expectedFile from '../reference/reference-breakwater.match.expected.json' with { type: 'json' }
import { type Server, startServer } from './server.ts'

const { game, options } = caseFile as unknown as { game: Game; options: Option[] }
const optionOf = (id: string) => options.find((option) => option.id === id)!
const row = expectedFile.matches[1]!

let server: Server

beforeAll(async () => {
  server = await startServer({ pool: { threads: 2 } })
})

afterAll(() => server.close())

const uneven = {
  game,
  ours: row.ours.map(optionOf),
  theirs: row.theirs.map(optionOf),
  replicates: 6200,
  seed: 12,
}

describe('POST /api/compute/compare in a stated field', () => {
  test('plays each option with the same partners, opponents and luck', { timeout: 120_000 }, async () => {
    const [own, ...partners] = uneven.ours
    const other = optionOf('cormorant-always')
    const { status, body } = await server.send('POST', '/api/compute/compare', {
      game,
      options: [own, other],
      objective: 'rankingPoints',
      field: { partners, opponents: uneven.theirs },
      replicates: 1500,
      seed: 12,
    })
    expect(status).toBe(200)
    for (const [index, option] of [own!, other].entries()) {
      const alone = simulate({ ...uneven, ours: [option, ...partners], replicates: 1500 })
      expect(body.options[index].win).toEqual(alone.win)
      const { mean, standardError } = alone.rankingPoints.ours
      expect(body.options[index].rankingPoints).toEqual({ mean, standardError })
      expect(body.field.options[index].bonuses).toEqual(
        Object.fromEntries(Object.entries(alone.bonuses).map(([id, { ours }]) => [id, ours])),
      )
    }
    const { [own!.id]: less } = body.field.differences
    const [first, second] = body.options
    expect(less[other.id].rankingPoints.mean).toBeCloseTo(first.rankingPoints.mean - second.rankingPoints.mean, 12)
    expect(body.field.replicates).toBe(1500)
  })
})

const small = () => {
  const three = [ternBest(), ternBest(), ternBest()]
  return { game: harbour(), level: 'local', ours: three, theirs: three, replicates: 600, seed: 1 }
}

describe('POST /api/compute/match', () => {
  test('two threads answer what one does, to the last bit, and near the independent program', {
    timeout: 120_000,
  }, async () => {
    const { status, body } = await server.send('POST', '/api/compute/match', uneven)
    expect(status).toBe(200)
    const { warnings, ...report } = body
    expect(report).toEqual(JSON.parse(JSON.stringify(simulate(uneven))))
    // Each of these alliances begins at three starts, and none takes more than lies there.
    expect(warnings).toEqual([])
    const { mean, sd } = row.score.ours
    const error = sd * Math.sqrt(1 / uneven.replicates + 1 / row.replicates)
    expect(Math.abs(body.score.ours.mean - mean)).toBeLessThan(4 * error)
    expect(body.distributions.margin.reduce((sum: number, [, p]: [number, number]) => sum + p, 0)).toBeCloseTo(1, 9)
    expect(body.win.probability + body.tie.probability + body.loss.probability).toBeCloseTo(1, 12)
    for (const { waiting, waited } of body.robots) {
      const places = Object.values(waiting) as { mean: number; standardError: number }[]
      expect(waited.mean).toBeCloseTo(
        places.reduce((sum, { mean }) => sum + mean, 0),
        9,
      )
      // The deviation of a sum is at most that of its parts together (Minkowski); waiting here for longer, and there for less.
      const together = places.reduce((sum, { standardError }) => sum + standardError, 0)
      expect(waited.standardError).toBeLessThanOrEqual(together + 1e-12)
      expect(waited.standardError).toBeGreaterThan(0)
    }
  })

  test('a precision stops at a multiple of 500 matches, the first at which it is reached', async () => {
    const { body } = await server.send('POST', '/api/compute/match', {
      ...small(),
      replicates: 50_000,
      precision: 0.012,
    })
    const error = (p: number, n: number) => Math.sqrt((p * (1 - p)) / (n + 4))
    // Near even chances the error is 0.5 / √(n + 4): 0.012 is reached at 1,733 matches, so after the fourth block.
    expect(body.replicates).toBe(2000)
    const share = (body.replicates * (body.win.probability + body.tie.probability / 2) + 2) / (body.replicates + 4)
    expect(error(share, body.replicates)).toBeLessThanOrEqual(0.012)
    expect(error(share, body.replicates - 500)).toBeGreaterThan(0.012)
  })

  test('other seeds meet other luck, the same seed the same', async () => {
    const play = async (seed: number) => (await server.send('POST', '/api/compute/match', { ...small(), seed })).body
    const [one, again, other] = [await play(1), await play(1), await play(2)]
    expect(again).toEqual(one)
    expect(other.score).not.toEqual(one.score)
  })

  test('a bonus that asks by level is told the level, or refused with the levels that there are', async () => {
    const body = small()
    body.game.bonuses = [
      {
        id: 'full',
        name: 'Full',
        rankingPoints: 1,
        points: 0,
        metric: { kind: 'autoPoints' },
        atLeast: { local: 1, final: 500 },
        scope: 'own',
      },
    ]
    const at = (level?: string) => server.send('POST', '/api/compute/match', { ...body, level })
    expect((await at('final')).body.bonuses.full.ours.probability).toBe(0)
    const { status, body: refused } = await at('district')
    expect(status).toBe(400)
    expect(refused.error).toMatchObject({ path: ['level'], message: expect.stringContaining('local, final') })
  })

  test('observed robots play among designed ones, and what is wrong with a habit is said where it stands', async () => {
    const body = small()
    const [one, two] = [ternBest(), ternBest()]
    one.robot.habit = {
      goals: { pier: 0.7, mast: 0.3 },
      pieces: { 1: 0.4, 2: 0.6 },
      departs: 15,
      draws: [{ time: 0.9 }, { time: 1.3, success: { pier: 0.6 } }],
    }
    two.robot.habit = { ...one.robot.habit, draws: [{}, { pieces: { 5: 1 } }] }
    const seen = { ...body, theirs: [ternBest(), one, one] }
    const { status, body: answer } = await server.send('POST', '/api/compute/match', seen)
    expect(status).toBe(200)
    const { warnings, ...report } = answer
    expect(report).toEqual(JSON.parse(JSON.stringify(simulate(seen))))
    // All six begin where one does.
    expect(warnings).toHaveLength(6)
    expect(answer.robots[4].points.mean).not.toBe(answer.robots[3].points.mean)
    const wrong = await server.send('POST', '/api/compute/match', { ...body, theirs: [ternBest(), ternBest(), two] })
    expect(wrong.status).toBe(400)
    expect(wrong.body.error.path).toEqual(['theirs', 2, 'robot', 'habit', 'draws', 1, 'pieces', '5'])
    expect(wrong.body.error.message).toContain('carries (2), got 5')
  })

  test('a document that does not fit the game is refused with the place in the request', async () => {
    const body = small()
    body.theirs = [ternBest(), { ...ternBest(), start: 'moon' }, ternBest()]
    const { status, body: refused } = await server.send('POST', '/api/compute/match', body)
    expect(status).toBe(400)
    expect(refused.error.path.slice(0, 2)).toEqual(['theirs', 1])
  })
})
