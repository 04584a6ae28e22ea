import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { Game, Option } from '../../src/model/documents/index.ts'
import type { LegRequest } from '../../src/model/leg/types.ts'
import type { Action } from '../../src/model/plan/types.ts'
import { harbour, ternBest } from '../model/documents/harbour.ts'
import expectedFile from '../reference/reference-breakwater.expected.json' with { type: 'json' }
import caseFile from '../reference/reference-breakwater.json' with { type: 'json' }
import { type Server, startServer } from './server.ts'

/** A few rows of the reference case through the whole server; the model's own tests go through all of them. */
const { game, options } = caseFile as unknown as { game: Game; options: Option[] }
const optionOf = (id: string) => options.find((option) => option.id === id)!

type Pairs = [number, number][]

interface Expected {
  travel: { option: string; from: string; to: string; length: number; seconds: number }[]
  legs: { option: string; leg: LegRequest; mean: number; sd: number; drive: object | null }[]
  plans: {
    option: string
    expected: { total: number; goals: Record<string, { points: number }> }
    sd: number
    distribution: Pairs
    first: { action: Action; value: number }[]
    call: { at: number; points: number } | null
  }[]
  compare: {
    options: string[]
    beats?: Record<string, Record<string, number>>
    input?: { id: string }
    crossings?: { value: number; from: string; to: string }[]
  }[]
}

const expected = expectedFile as unknown as Expected

let server: Server

beforeAll(async () => {
  server = await startServer()
})

afterAll(() => server.close())

const every = <Row>(rows: readonly Row[], step: number) => rows.filter((_, index) => index % step === 0)

describe('POST /api/compute/travel', () => {
  test.each(every(expected.travel, 40))('$option from $from to $to', async ({ option, from, to, length, seconds }) => {
    const { robot } = optionOf(option)
    const { status, body } = await server.send('POST', '/api/compute/travel', { game, robot, from, to })
    expect(status).toBe(200)
    expect(Object.keys(body).sort()).toEqual(['length', 'path', 'seconds'])
    expect(Math.abs(body.length / length - 1)).toBeLessThan(1e-6)
    expect(Math.abs(body.seconds / seconds - 1)).toBeLessThan(1e-6)
    // The drawn path is the way: arcs sampled to 1 cm are shorter than the exact length by a hair only.
    const drawn = (body.path as [number, number][]).reduce(
      (sum, [x, y], index, all) => sum + (index === 0 ? 0 : Math.hypot(x - all[index - 1]![0], y - all[index - 1]![1])),
      0,
    )
    expect(drawn).toBeLessThanOrEqual(body.length * (1 + 1e-9))
    expect(drawn).toBeGreaterThan(body.length * 0.999)
  })
})

describe('POST /api/compute/leg', () => {
  test.each(every(expected.legs, 30))('$option $leg', async ({ option, leg, mean, sd }) => {
    const { robot } = optionOf(option)
    const { status, body } = await server.send('POST', '/api/compute/leg', { game, robot, leg })
    expect(status).toBe(200)
    expect(Math.abs(body.mean - mean)).toBeLessThan(2e-3)
    expect(Math.abs(body.sd - sd)).toBeLessThan(sd === 0 ? 5.5e-3 : 2e-3)
    const total = (body.distribution as Pairs).reduce((sum, [, chance]) => sum + chance, 0)
    // Grid times with a chance below a billionth are left out of the answer.
    expect(Math.abs(total - 1)).toBeLessThan(1e-6)
  })
})

describe('POST /api/compute/plan', () => {
  test.each(['cormorant-best', 'petrel-skip', 'gannet-always'])('%s', async (id) => {
    const row = expected.plans.find(({ option }) => option === id)!
    const { status, body } = await server.send('POST', '/api/compute/plan', {
      game,
      option: optionOf(id),
      with: ['call'],
    })
    expect(status).toBe(200)
    expect(Math.abs(body.expected.total - row.expected.total)).toBeLessThan(5e-3)
    expect(Math.abs(body.sd - row.sd)).toBeLessThan(1e-2)
    for (const [goal, { points }] of Object.entries(row.expected.goals)) {
      expect(Math.abs(body.expected.goals[goal].points - points), goal).toBeLessThan(5e-3)
    }
    const answered = new Map(
      body.first.map(({ action, value }: { action: Action; value: number }) => [key(action), value]),
    )
    expect(row.first.length).toBeGreaterThan(0)
    for (const { action, value } of row.first) {
      expect(Math.abs((answered.get(key(action)) as number) - value), key(action)).toBeLessThan(5e-3)
    }
    if (row.call === null) expect(body.call).toBeNull()
    else expect(Math.abs(body.call.points - row.call.points)).toBeLessThan(5e-3)
    expect(body).not.toHaveProperty('worth')
  })

  test('asks for a coarser grid and the worth of stages', async () => {
    const option = optionOf('cormorant-best')
    const { status, body } = await server.send('POST', '/api/compute/plan', {
      game,
      option,
      step: 0.25,
      with: ['worth'],
    })
    expect(status).toBe(200)
    expect(body).not.toHaveProperty('call')
    const trips = [option.robot.collect, option.robot.finish, ...Object.values(option.robot.score)].flatMap(
      Object.values,
    )
    const stages = trips.flatMap((trip) => ('stages' in trip ? trip.stages : [])).length
    expect(body.worth).toHaveLength(stages)
    const winch = body.worth.find((each: { stage: string }) => each.stage === 'winch')
    expect(winch.leg).toEqual({ kind: 'finish', finish: 'davit' })
    expect(winch.pointsPerSecond).toBeGreaterThan(0)
  })
})

function key(action: Action): string {
  return JSON.stringify(Object.entries(action).sort(([a], [b]) => a.localeCompare(b)))
}

describe('POST /api/compute/compare', () => {
  test('the chances that each option beats each', async () => {
    const row = expected.compare.find(({ beats }) => beats)!
    const { status, body } = await server.send('POST', '/api/compute/compare', {
      game,
      options: row.options.map(optionOf),
    })
    expect(status).toBe(200)
    expect(body.options.map(({ id }: { id: string }) => id)).toEqual(row.options)
    for (const [one, others] of Object.entries(row.beats!)) {
      for (const [other, chance] of Object.entries(others)) {
        expect(Math.abs(body.beats[one][other] - chance), `${one} beats ${other}`).toBeLessThan(2e-3)
      }
    }
    expect(Object.keys(body).sort()).toEqual(['beats', 'options'])
  })

  test.each(expected.compare.filter(({ crossings }) => crossings))('break-even of $options', async (row) => {
    const { status, body } = await server.send('POST', '/api/compute/compare', {
      game,
      options: row.options.map(optionOf),
      inputs: [row.input],
      breakEven: row.input!.id,
      objective: 'points',
    })
    expect(status).toBe(200)
    expect(body.breakEven.input).toBe(row.input!.id)
    expect(body.breakEven.crossings).toHaveLength(row.crossings!.length)
    for (const [index, crossing] of row.crossings!.entries()) {
      expect(Math.abs(body.breakEven.crossings[index].value - crossing.value)).toBeLessThan(1e-3)
      expect(body.breakEven.crossings[index]).toMatchObject({ from: crossing.from, to: crossing.to })
    }
    expect(body.swing).toHaveLength(1)
  })

  test('belief about one unknown number: chances, regret and what knowing it is worth', async () => {
    const small = harbour()
    Object.assign(small.clock, { teleop: 20, endgame: 10 })
    const skip = { ...ternBest(), id: 'tern-skip', finish: { mode: 'skip' } }
    const paths = ['/options/0/robot/finish/davit/success']
    const input = { id: 'hang', paths, as: 'value', low: 0, likely: 0.2, high: 1, perMeasurement: 0.4 }
    const request = { game: small, options: [ternBest(), skip], inputs: [input], belief: { seed: 3 } }
    const { status, body } = await server.send('POST', '/api/compute/compare', request)
    expect(status).toBe(200)
    const { best, regret, evpi, evppi, evsi } = body.belief
    expect(best['tern-best'] + best['tern-skip']).toBeCloseTo(1, 9)
    // The regret of the best choice made without knowing is what perfect knowledge would save.
    expect(Math.min(regret['tern-best'], regret['tern-skip'])).toBeCloseTo(evpi.value, 6)
    expect(Object.keys(evppi)).toEqual(['hang'])
    expect(Object.keys(evsi)).toEqual(['hang'])
  })

  test('an observed robot plays by its habit, so that a plan of it is refused, and a comparison of plans with it', async () => {
    const option = optionOf('dunlin-guess')
    const habit = { goals: { pier: 1 }, pieces: { 1: 1 }, departs: 20 }
    const observed = { ...option, robot: { ...option.robot, habit } }
    const refused = { code: 'notOffered', message: expect.stringContaining('/api/compute/match') }
    const planned = await server.send('POST', '/api/compute/plan', { game, option: observed })
    expect(planned.status).toBe(422)
    expect(planned.body.error).toMatchObject({ ...refused, path: ['option', 'robot', 'habit'] })
    const options = [optionOf('cormorant-best'), { ...observed, id: 'observed' }]
    const compared = await server.send('POST', '/api/compute/compare', { game, options })
    expect(compared.status).toBe(422)
    expect(compared.body.error).toMatchObject({ ...refused, path: ['options', 1, 'robot', 'habit'] })
  })

  const unknown = {
    id: 'unknown',
    paths: ['/options/0/robot/finish/davit/success'],
    as: 'value',
    low: 0.5,
    likely: 0.6,
    high: 0.7,
  }
  test.each([
    [{ objective: 'win' }, 400, 'malformed', 'field'],
    [{ objective: 'rankingPoints', inField: true, belief: { seed: 1 } }, 422, 'notOffered', 'belief'],
    [{ objective: 'win', inField: true, inputs: [unknown] }, 422, 'notOffered', 'inputs'],
    [{ objective: 'win', inField: true, inputs: [unknown], breakEven: 'unknown' }, 422, 'notOffered', 'breakEven'],
  ])('what a comparison by whole matches can not say is refused: %o', async (asked, status, code, path) => {
    const option = optionOf('cormorant-best')
    const { inField, ...rest } = { inField: false, ...asked }
    const field = inField ? { partners: [option, option], opponents: [option, option, option] } : undefined
    const answer = await server.send('POST', '/api/compute/compare', { game, options: [option], field, ...rest })
    expect(answer.status).toBe(status)
    expect(answer.body.error).toMatchObject({ code, path: [path] })
    expect(answer.body.error.message.length).toBeGreaterThan(40)
  })
})
