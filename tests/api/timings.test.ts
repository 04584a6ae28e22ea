import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { Mechanism, StoredAir } from '../../src/model/documents/index.ts'
import { Planner } from '../../src/model/plan/index.ts'
import { airPlan, followHardware, mostOff, sweep, timing } from '../../src/model/timing/index.ts'
import { harbour, ternBest } from '../model/documents/harbour.ts'
import {
  airInput,
  cylinderInput,
  driveInput,
  examples,
  motorPivotInput,
  shotInput,
  wheelInput,
} from '../model/timing/inputs.ts'
import { type Server, startServer } from './server.ts'

let server: Server

beforeAll(async () => {
  server = await startServer()
})

afterAll(() => server.close())

/** Of the plain example without what a plan has itself. */
const { strokes: _, cycleSeconds: __, matchSeconds: ___, ...rest } = airInput
const supplied = { ...rest, stored: 900_000, working: 501_325, ambient: 101_325, leak: 0.000005 }

const ask = (name: string, body: unknown) => server.send('POST', `/api/compute/timing/${name}`, body)

test.each(examples.map(([name, input], index) => ({ name, index, input })))(
  'POST /api/compute/timing/$name answers what the model says, example $index',
  async ({ name, input }) => {
    const { status, body } = await ask(name, input)
    expect(status, JSON.stringify(body).slice(0, 300)).toBe(200)
    expect(body).toEqual(JSON.parse(JSON.stringify(timing(name, input))))
    expect(body.possible).toBe(true)
  },
)

test('An impossible mechanism is answered in words, with what an engineer would check', async () => {
  const { status, body } = await ask('pivot', { ...motorPivotInput, reduction: 8 })
  expect(status).toBe(200)
  expect(body).toMatchObject({ possible: false, why: { code: 'tooWeakToLift' } })
  expect(body.why.message).toMatch(/does not start: the motors turn with 4\.15 N·m/)
  expect(body.quantities.gravityTorque).toBeCloseTo(4 * 9.80665 * 0.4, 3)
})

describe('POST /api/compute/timing/air-plan', () => {
  const option = ternBest()
  const mechanism: Mechanism<'cylinder'> = {
    id: 'claw',
    name: 'Claw',
    calculator: 'cylinder',
    input: cylinderInput,
  }
  const air: StoredAir = {
    ...supplied,
    trips: [{ leg: { kind: 'collect', source: 'slip' }, mechanism: 'claw', out: 1, back: 1 }],
    autonomous: [{ mechanism: 'claw', out: 1, back: 1 }],
    low: 341_325,
    slower: 3,
  }
  const robot = { ...option.robot, mechanisms: [mechanism], air }
  const request = { game: harbour(), option: { ...option, robot } }

  test('answers what the model says', async () => {
    const { status, body } = await ask('air-plan', request)
    expect(status, JSON.stringify(body).slice(0, 300)).toBe(200)
    expect(body).toEqual(JSON.parse(JSON.stringify(airPlan(request.game, request.option))))
    expect(body.possible).toBe(true)
    expect(body.trips[0].leg).toEqual({ kind: 'collect', source: 'slip' })
  })

  test('says in words why air can not be stored so', async () => {
    const full = { ...request.option, robot: { ...robot, air: { ...air, stored: 1_100_000 } } }
    const { status, body } = await ask('air-plan', { ...request, option: full })
    expect(status).toBe(200)
    expect(body).toMatchObject({ possible: false, why: { code: 'tankOverPressure' } })
  })

  test.each([
    ['a robot without air', { ...option, robot: option.robot }, ['option', 'robot', 'air'], /no stored air/],
    [
      'a mechanism that is not there',
      { ...option, robot: { ...robot, mechanisms: [] } },
      ['option', 'robot', 'air', 'trips', 0, 'mechanism'],
      /no mechanism of the robot that air moves with the id “claw”/,
    ],
    [
      'a low pressure above the working one',
      { ...option, robot: { ...robot, air: { ...air, low: 600_000 } } },
      ['option', 'robot', 'air', 'low'],
      /low must be at most working/,
    ],
  ])('refuses %s', async (_, refused, path, words) => {
    const { status, body } = await ask('air-plan', { game: request.game, option: refused })
    expect(status).toBe(400)
    expect(body.error.path).toEqual(path)
    expect(body.error.message).toMatch(words)
  })
})

describe('Refused with the field and a sentence:', () => {
  test.each([
    ['drive', { ...driveInput, mass: 0 }, ['mass'], /mass must be at least 0\.5, got 0/],
    ['drive', { ...driveInput, motors: 2.5 }, ['motors'], /whole number|motors/],
    ['drive', { ...driveInput, distance: undefined }, ['distance'], /distance/],
    [
      'drive',
      { ...driveInput, friction: { kind: 'range', low: 1.2, likely: 1, high: 1.3 } },
      ['friction', 'likely'],
      /likely must be at least low \(1\.2\), got 1/,
    ],
    [
      'drive',
      { ...driveInput, efficiency: { kind: 'lognormal', median: 0.9, spread: 1.2 } },
      ['efficiency', 'spread'],
      /one in a thousand would lie outside of 0\.05 to 1/,
    ],
    [
      'drive',
      { ...driveInput, motor: { ...driveInput.motor, freeCurrent: 100 } },
      ['motor', 'freeCurrent'],
      /at most half of the stall current \(120 A\), got 100/,
    ],
    ['drive', { ...driveInput, motor: { ...driveInput.motor, date: 'yesterday' } }, ['motor', 'date'], /date/],
    ['drive', { ...driveInput, colour: 'red' }, ['colour'], /not a field that is known/],
    ['pivot', { ...motorPivotInput, by: 'hand' }, ['by'], /by must be "motor" or "cylinder", got "hand"/],
    [
      'pivot',
      { ...motorPivotInput, stops: { low: 1, high: 0 } },
      ['stops', 'high'],
      /high must be above low \(1\), got 0/,
    ],
    ['wheel', { ...wheelInput, stage: 'recovery', shot: null }, ['shot'], /needed to time a recovery/],
    ['shot', { ...shotInput, angle: 2 }, ['angle'], /at most 1\.55, got 2/],
    [
      'cylinder',
      { ...cylinderInput, cylinder: { ...cylinderInput.cylinder, rod: 0.04 } },
      ['cylinder', 'rod'],
      /at most 0\.95 of the bore/,
    ],
    [
      'air',
      { ...airInput, compressor: { ...airInput.compressor, on: 950_000 } },
      ['compressor', 'on'],
      /on must be at most off/,
    ],
  ])('%s', async (name, input, path, words) => {
    const { status, body } = await ask(name, input)
    expect(body.error?.message, JSON.stringify(body).slice(0, 200)).toMatch(words)
    expect(status).toBe(400)
    expect(body.error.path).toEqual(path)
  })

  test('a calculator that does not exist', async () => {
    expect((await ask('catapult', driveInput)).status).toBe(404)
  })

  test('a motion that is too quick to be followed, as 422', async () => {
    const tiny = {
      ...motorPivotInput,
      motors: 16,
      inertia: 1e-6,
      mass: 0.001,
      centre: 0,
      friction: 0,
      currentLimit: null,
    }
    const motor = { ...motorPivotInput.motor, rotorInertia: 0, stallTorque: 1000 }
    const { status, body } = await ask('pivot', { ...tiny, motor, reduction: 5000, end: 'stop' })
    expect(status, JSON.stringify(body).slice(0, 300)).toBe(422)
    expect(body.error).toMatchObject({ code: 'overBudget' })
  })
})

const search = (changes: object = {}) => ({
  calculator: 'pivot',
  input: motorPivotInput,
  reductions: { low: 20, high: 400, count: 40 },
  motors: [1, 2],
  limits: { sourceCurrent: 60 },
  ...changes,
})

describe('POST /api/compute/timing/sweep', () => {
  test('answers what the model says, what can not be done among it', async () => {
    const { status, body } = await ask('sweep', search())
    expect(status, JSON.stringify(body).slice(0, 300)).toBe(200)
    expect(body).toEqual(JSON.parse(JSON.stringify(sweep(search() as Parameters<typeof sweep>[0]))))
    expect(body.points).toHaveLength(80)
    expect(body.points[0]).toMatchObject({ motors: 1, seconds: null, within: false, loads: null })
    expect(body.points[0].why.message).toMatch(/motors/)
    expect(body.best.loads.sourceCurrent).toBeLessThanOrEqual(60)
  })

  test('tells the points of a match too, where one of its robot’s mechanisms is searched', async () => {
    const option = ternBest()
    const trip = option.robot.score['pier']![0]!
    if (!('stages' in trip)) throw new Error('no stages')
    const hardware = { mechanism: 'arm', follows: true }
    const pier = [{ ...trip, stages: trip.stages.map((stage) => ({ ...stage, hardware })) }]
    const arm: Mechanism = { id: 'arm', name: 'Arm', calculator: 'pivot', input: { ...motorPivotInput, reduction: 90 } }
    const robot = { ...option.robot, score: { ...option.robot.score, pier }, mechanisms: [arm] }
    const match = { game: harbour(), option: { ...option, robot }, mechanism: 'arm' }
    const few = { reductions: { low: 20, high: 400, count: 12 }, motors: [1] }
    const { status, body } = await ask('sweep', search({ ...few, match }))
    expect(status, JSON.stringify(body).slice(0, 300)).toBe(200)
    expect(body.match.points).toHaveLength(12)
    const planner = new Planner(match.game, 0.25)
    for (const [i, { reduction, motors, seconds }] of body.points.entries()) {
      const told = body.match.points[i]
      expect(told === null, `at ${reduction}`).toBe(seconds === null)
      if (told === null) continue
      const input = { ...motorPivotInput, reduction }
      const geared = { ...robot, mechanisms: [{ ...arm, input } as Mechanism] }
      const own = planner.value({ ...match.option, robot: followHardware(robot, geared) })
      // What was planned is exact, and what lies between keeps to what the lines are halved for.
      const most = told.off === 0 ? 1e-9 : mostOff
      expect(Math.abs(told.points - own), `${reduction} ${motors}`).toBeLessThanOrEqual(most)
    }
    // The input’s own gearing, not that of the robot’s mechanism.
    const same = { ...robot, mechanisms: [{ ...arm, input: motorPivotInput } as Mechanism] }
    expect(body.match.own).toBeCloseTo(planner.value({ ...match.option, robot: followHardware(robot, same) }), 9)
    const refused = await ask('sweep', search({ ...few, match: { ...match, mechanism: 'claw' } }))
    expect(refused.status).toBe(400)
    expect(refused.body.error).toMatchObject({ path: ['match', 'mechanism'] })
    expect(refused.body.error.message).toMatch(/no pivot mechanism with the id “claw”/)
  })

  test('leaves reductions out whose motion is too quick to be followed', async () => {
    const motor = { ...motorPivotInput.motor, rotorInertia: 0, stallTorque: 1000 }
    const tiny = { inertia: 1e-6, mass: 0.001, centre: 0, friction: 0, currentLimit: null, end: 'stop' }
    const input = { ...motorPivotInput, ...tiny, motor }
    const { status, body } = await ask('sweep', search({ input, motors: [16], limits: {} }))
    expect(status, JSON.stringify(body).slice(0, 300)).toBe(200)
    expect(body.points.at(-1)).toMatchObject({ seconds: null, why: { code: 'notFollowed' } })
  })

  test.each([
    [{ reductions: { low: 50, high: 40, count: 9 } }, ['reductions', 'high'], /high must be above low \(50\), got 40/],
    [{ reductions: { low: 20, high: 40, count: 501 } }, ['reductions', 'count'], /at most 500, got 501/],
    [{ reductions: { low: 20, high: 40, count: 400 }, motors: [1, 2, 3] }, ['reductions', 'count'], /1000, got 1200/],
    [{ motors: [2, 4, 2] }, ['motors', 2], /each number once, got 2 again/],
    [{ motors: [] }, ['motors'], /motors/],
    [{ limits: { motorCurrent: -1 } }, ['limits', 'motorCurrent'], /at least 0, got -1/],
    [{ calculator: 'shot', input: shotInput }, ['calculator'], /"shot"/],
    [{ input: { ...motorPivotInput, mass: -1 } }, ['input', 'mass'], /mass must be at least 0\.001, got -1/],
  ])('refuses %j with the field and a sentence', async (changes, path, words) => {
    const { status, body } = await ask('sweep', search(changes))
    expect(body.error?.message, JSON.stringify(body).slice(0, 200)).toMatch(words)
    expect(status).toBe(400)
    expect(body.error.path).toEqual(path)
  })
})

test('The description publishes every body, with units and parts', async () => {
  const { body } = await server.get('/api/openapi.json')
  const names = ['drive', 'rollers', 'pivot', 'wheel', 'shot', 'cylinder', 'air']
  for (const name of names) {
    const { post } = body.paths[`/api/compute/timing/${name}`]
    const text = JSON.stringify(post.requestBody.content['application/json'].schema)
    const { $ref } = post.requestBody.content['application/json'].schema
    const schema = $ref ? body.components.schemas[$ref.split('/').at(-1)] : JSON.parse(text)
    const fields = (schema.oneOf ?? schema.anyOf ?? [schema]).map((each: { properties: object }) =>
      Object.keys(each.properties),
    )
    expect(fields.flat().length, name).toBeGreaterThan(8)
    expect(JSON.stringify(post.responses['200']), name).toContain('schema')
  }
  expect(body.components.schemas.Motor.properties.freeSpeed.description).toContain('rad/s')
})
