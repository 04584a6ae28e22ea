import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { inLongForm } from '../browser/longForm.ts'
import { harbour, ternBest } from '../model/documents/harbour.ts'
import { examples } from '../model/timing/inputs.ts'
import { bodies } from './mutations.ts'
import { type Server, startServer } from './server.ts'

let server: Server

beforeAll(async () => {
  server = await startServer({
    pool: {
      budgets: {
        travel: 5,
        leg: 5,
        plan: 10,
        planPart: 10,
        worth: 10,
        compare: 20,
        timing: 10,
        airPlan: 20,
        sweep: 10,
        matches: 20,
        stated: 20,
        candidates: 20,
        lineups: 30,
        calibrations: 20,
        film: 20,
        estimates: 20,
        estimatesOfTeams: 20,
        changed: 20,
        halfLives: 20,
        made: 20,
        earlierChanges: 20,
        sideBySide: 20,
        observed: 20,
        versions: 20,
        lanes: 20,
        decision: 20,
        pickOrder: 20,
        seedLots: 20,
        seeds: 20,
        ratings: 20,
        doubts: 20,
        solved: 20,
        estimateReport: 20,
        field: 20,
        season: 20,
        draws: 20,
        summary: 20,
      },
    },
  })
})

afterAll(() => server.close())

/** Runs more of them in the long form, or when asked to: FUZZ=2000. The seed is fixed, so that a failure is found again. */
const runs = Number(process.env['FUZZ'] ?? (inLongForm ? 240 : 40))
const seed = Number(process.env['FUZZ_SEED'] ?? 7)

async function answered(method: string, path: string, body: unknown, allowed: readonly number[]): Promise<number> {
  const answer = await server.send(method, path, body)
  expect(allowed, JSON.stringify(answer.body).slice(0, 500)).toContain(answer.status)
  if (answer.status === 200) return answer.status
  expect(answer.body.error.message.length).toBeGreaterThan(10)
  if (answer.status === 400) expect(Array.isArray(answer.body.error.path), answer.body.error.message).toBe(true)
  return answer.status
}

describe('Whatever is changed in a document, the answer is a result or a sentence, in time:', () => {
  const request = { game: harbour(), option: ternBest() }

  test('a plan', { timeout: 600_000 }, async () => {
    const seen = new Set<number>()
    await fc.assert(
      fc.asyncProperty(bodies(request), async (body) => {
        seen.add(await answered('POST', '/api/compute/plan', body, [200, 400, 422]))
      }),
      { numRuns: runs, seed },
    )
    // Otherwise the changes would be too harsh or too mild to try anything.
    expect([...seen]).toEqual(expect.arrayContaining([200, 400]))
  })

  test('a match', { timeout: 600_000 }, async () => {
    const { game, option } = request
    const habit = {
      goals: { pier: 0.7, mast: 0.3 },
      pieces: { 1: 0.4, 2: 0.6 },
      departs: 15,
      unhindered: { slip: 0.9 },
      draws: [
        { time: 1.1, form: 1.2, success: { pier: 0.8 }, absent: 0.1 },
        { pieces: { 2: 1 }, departs: 18 },
      ],
    }
    const body = {
      game,
      ours: [option, option, option],
      theirs: [option, option, { ...option, robot: { ...option.robot, habit } }],
      level: 'local',
      replicates: 20,
      seed: 1,
    }
    const seen = new Set<number>()
    await fc.assert(
      fc.asyncProperty(bodies(body), async (changed) => {
        seen.add(await answered('POST', '/api/compute/match', changed, [200, 400, 422]))
      }),
      { numRuns: Math.ceil(runs / 2), seed },
    )
    expect([...seen]).toEqual(expect.arrayContaining([200, 400]))
  })

  test('a season', { timeout: 600_000 }, async () => {
    const { game, option } = request
    const six = ['a', 'b', 'c', 'd', 'e', 'f']
    const body = {
      game,
      level: 'local',
      teams: six.map((team) => ({ team, draws: [option] })),
      matches: [{ id: 'one', ours: six.slice(0, 3), theirs: six.slice(3) }],
      seasons: 20,
      seed: 1,
      replicates: 500,
      precision: 0.1,
    }
    const seen = new Set<number>()
    await fc.assert(
      fc.asyncProperty(bodies(body), async (changed) => {
        seen.add(await answered('POST', '/api/compute/season', changed, [200, 400, 422]))
      }),
      { numRuns: Math.ceil(runs / 3), seed },
    )
    expect([...seen]).toEqual(expect.arrayContaining([200, 400]))
  })

  test('a way', { timeout: 600_000 }, async () => {
    const { game, option } = request
    await fc.assert(
      fc.asyncProperty(bodies({ game, robot: option.robot, from: 'left', to: 'davit.1' }), async (body) => {
        await answered('POST', '/api/compute/travel', body, [200, 400, 422])
      }),
      { numRuns: runs, seed },
    )
  })

  test('a leg', { timeout: 600_000 }, async () => {
    const { game, option } = request
    const leg = { kind: 'score', goal: 'pier', entry: 0, spot: 'pier.2', from: 'slip.1', piece: 'buoy', load: 2 }
    await fc.assert(
      fc.asyncProperty(bodies({ game, robot: option.robot, leg }), async (body) => {
        await answered('POST', '/api/compute/leg', body, [200, 400, 422])
      }),
      { numRuns: runs, seed },
    )
  })

  test('a comparison', { timeout: 600_000 }, async () => {
    const { game, option } = request
    const options = [option, { ...option, id: 'skip', finish: { mode: 'skip' } }]
    const paths = ['/options/0/robot/finish/davit/success', '/options/1/robot/finish/davit/success']
    const inputs = [{ id: 'hang', paths, as: 'factor', low: 0.5, likely: 1, high: 1.1 }]
    await fc.assert(
      fc.asyncProperty(bodies({ game, options, inputs }), async (body) => {
        await answered('POST', '/api/compute/compare', body, [200, 400, 422])
      }),
      { numRuns: Math.ceil(runs / 4), seed },
    )
  })

  test.each(['pivot', 'air'])('hardware of the %s calculator', { timeout: 600_000 }, async (name) => {
    const [, input] = examples.findLast(([calculator]) => calculator === name)!
    await fc.assert(
      fc.asyncProperty(bodies(input), async (body) => {
        await answered('POST', `/api/compute/timing/${name}`, body, [200, 400, 422])
      }),
      { numRuns: runs, seed },
    )
  })

  test('a document that is saved', { timeout: 600_000 }, async () => {
    let base: number | null = null
    await fc.assert(
      fc.asyncProperty(bodies(harbour()), async (body) => {
        const { revision } = (await server.get('/api/documents/game/harbour')).body
        base = revision ?? null
        await answered('PUT', '/api/documents/game/harbour', { base, body }, [200, 400])
      }),
      { numRuns: runs, seed },
    )
  })
})
