import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { Game, Option, Role } from '../../src/model/documents/index.ts'
import { inLongForm } from '../browser/longForm.ts'
import caseFile from '../reference/reference-breakwater.json' with { type: 'json' }
import { type Server, startServer } from './server.ts'

const { game, options } = caseFile as unknown as { game: Game; options: Option[] }
const optionOf = (id: string) => options.find((option) => option.id === id)!

let server: Server
beforeAll(async () => {
  server = await startServer({ pool: { threads: 2 } })
})
afterAll(() => server.close())

const ours = ['cormorant-best', 'petrel-best', 'gannet-keeper'].map(optionOf)
const theirs = [
  ['cormorant-always', 'petrel-pier', 'gannet-skip'].map(optionOf),
  ['dunlin-guess', 'petrel-best', 'gannet-keeper'].map(optionOf),
]
const role = (of: number, change: Partial<Role>): Role => ({ ...ours[of]!.role, ...change })

/** The first robot is forced to one role; the second may tick one goal or the other; the third may leave a finish out. */
const request = {
  game,
  ours,
  theirs,
  weights: [3, 1],
  roles: [
    [role(0, { finishes: ['davit'] })],
    [role(1, { goals: ['pier'] }), role(1, { goals: ['pier', 'gantry'] })],
    [role(2, { finishes: ['drydock'] })],
  ],
  seed: 4,
  objective: 'win',
}
const ask = (change: object = {}) => server.send('POST', '/api/compute/lineup', { ...request, ...change })

/** What a line-up is worth against a setting by the match's own endpoint, on other luck. */
async function worthOf(roles: Role[], setting: Option[], of: 'win' | 'rankingPoints') {
  const own = ours.map((option, i) => ({ ...option, role: roles[i]! }))
  const { body } = await server.send('POST', '/api/compute/match', {
    game,
    ours: own,
    theirs: setting,
    replicates: 4000,
    seed: 77,
  })
  if (of === 'rankingPoints') return body.rankingPoints.ours as { mean: number; standardError: number }
  const mean = body.win.probability + body.tie.probability / 2
  return { mean, standardError: Math.sqrt((mean * (1 - mean)) / 4000) }
}

describe('POST /api/compute/lineup', () => {
  test('keeps forced roles, weighs the rivals’ settings, and says the worst of them and what the runner-up loses', {
    timeout: 240_000,
  }, async () => {
    const { status, body } = await ask()
    expect(status).toBe(200)
    expect(body).toMatchObject({ candidates: 2, simulated: 2, replicates: 20_000, seed: 4, warnings: [] })
    expect(body.best.roles[0]).toEqual(request.roles[0]![0])
    expect(body.best.roles[2]).toEqual(request.roles[2]![0])
    expect([body.best.roles[1], body.runnerUp.roles[1]]).toEqual(expect.arrayContaining(request.roles[1]!))
    expect(body.loses.mean).toBeCloseTo(body.best.value.mean - body.runnerUp.value.mean, 9)
    expect(body.loses.mean).toBeGreaterThan(0)
    const each = [await worthOf(body.best.roles, theirs[0]!, 'win'), await worthOf(body.best.roles, theirs[1]!, 'win')]
    const mean = (3 * each[0]!.mean + each[1]!.mean) / 4
    const error = Math.hypot(0.75 * each[0]!.standardError, 0.25 * each[1]!.standardError)
    expect(Math.abs(body.best.value.mean - mean)).toBeLessThan(4 * Math.hypot(error, body.best.value.standardError))
    const worst = each.map(({ mean: own }) => own).indexOf(Math.min(each[0]!.mean, each[1]!.mean))
    expect(body.worst.rival).toBe(worst)
    // The worst one is met in a quarter of 20,000 matches at least.
    const counted = Math.hypot(each[worst]!.standardError, 0.5 / Math.sqrt(5000))
    expect(Math.abs(body.worst.value - each[worst]!.mean)).toBeLessThan(4 * counted)
  })

  test.runIf(inLongForm)('by ranking points a line-up is worth what the match pays', { timeout: 240_000 }, async () => {
    const { body } = await ask({ objective: 'rankingPoints', theirs: [theirs[1]], weights: undefined })
    const { mean, standardError } = await worthOf(body.best.roles, theirs[1]!, 'rankingPoints')
    expect(Math.abs(body.best.value.mean - mean)).toBeLessThan(
      4 * Math.hypot(standardError, body.best.value.standardError),
    )
    expect(body.worst).toEqual({ rival: 0, value: body.best.value.mean })
  })

  test('what does not fit is refused with the place: weights by number, roles by robot', async () => {
    const weighed = await ask({ weights: [1, 0, 0] })
    expect(weighed.status).toBe(400)
    expect(weighed.body.error).toMatchObject({ path: ['weights'] })
    const odd = [request.roles[0], [role(1, { goals: ['moon'] })], request.roles[2]]
    const unknown = await ask({ roles: odd })
    expect(unknown.status).toBe(400)
    expect(unknown.body.error.path.slice(0, 3)).toEqual(['roles', 1, 0])
    const none = await ask({ roles: [request.roles[0], [], request.roles[2]] })
    expect(none.status).toBe(400)
    expect(none.body.error.path.slice(0, 2)).toEqual(['roles', 1])
  })

  test('partners that clash in autonomous are named, and the match says so of both alliances', {
    timeout: 60_000,
  }, async () => {
    const twice = [ours[0]!, ours[1]!, { ...ours[0]!, id: 'again' }]
    const { body } = await server.send('POST', '/api/compute/match', {
      game,
      ours,
      theirs: twice,
      replicates: 1,
      seed: 1,
    })
    expect(body.warnings).toMatchObject([
      {
        kind: 'start',
        alliance: 'theirs',
        partners: [
          { position: 1, robot: 'Cormorant' },
          { position: 3, robot: 'Cormorant' },
        ],
        message: expect.stringContaining(
          'Cormorant (position 1) and Cormorant (position 3) begin in each other’s place',
        ),
      },
    ])
  })
})
