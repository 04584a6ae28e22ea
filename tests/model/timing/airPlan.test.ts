import fc from 'fast-check'
import { beforeAll, describe, expect, test } from 'vitest'
import { compressor, slimCylinder, tank, wideCylinder } from '../../../seed/parts.ts'
import { airPlanAnswer as answerContract } from '../../../src/api/contracts/index.ts'
import { robot as contract } from '../../../src/api/contracts/robot.ts'
import {
  checkRobot,
  type Mechanism,
  type Option,
  type Robot,
  type StoredAir,
} from '../../../src/model/documents/index.ts'
import { mean } from '../../../src/model/duration/index.ts'
import { expectedTrips, Planner, type Solved } from '../../../src/model/plan/index.ts'
import {
  type AirPlan,
  airOfRobot,
  airPlan,
  slowedByAir,
  strokesOf,
  timing,
  usesByStages,
} from '../../../src/model/timing/index.ts'
import { harbour, ternBest } from '../documents/harbour.ts'
import { cylinderInput, cylinderPivotInput } from './inputs.ts'

const game = harbour()
const dropper: Mechanism<'cylinder'> = {
  id: 'dropper',
  name: 'Dropper',
  calculator: 'cylinder',
  input: { ...cylinderInput, cylinders: 2, load: { kind: 'range', low: 400, likely: 450, high: 500 } },
}
const lifter: Mechanism<'pivot'> = { id: 'lifter', name: 'Lifter', calculator: 'pivot', input: cylinderPivotInput }

const air: StoredAir = {
  tank,
  tanks: 1,
  stored: 900_000,
  working: 501_325,
  ambient: 101_325,
  leak: 0,
  compressor: null,
  trips: [{ leg: { kind: 'score', goal: 'pier', entry: 0 }, mechanism: 'dropper', out: 1, back: 1 }],
  autonomous: [],
  low: 341_325,
  slower: 3,
}

/** Only the pier, so that a slower stage there can not be avoided; its stage has a time of its own, or the mechanism's. */
function optionWith(change: Partial<StoredAir> = {}, follows = false, mechanism: Mechanism = dropper): Option {
  const base = ternBest()
  const pier = base.robot.score['pier']![0]!
  if (!('stages' in pier)) throw new Error('no stages')
  const stages = pier.stages.map((stage) => ({ ...stage, hardware: { mechanism: mechanism.id, follows } }))
  const robot: Robot = {
    ...base.robot,
    score: { ...base.robot.score, pier: [{ ...pier, stages }] },
    mechanisms: [mechanism],
    air: { ...air, ...change },
  }
  return { ...base, robot, role: { ...base.role, goals: ['pier'] } }
}

const planner = new Planner(game)
const run = (change: Partial<StoredAir> = {}): AirPlan & { possible: true } => {
  const answer = airPlan(game, optionWith(change), planner)
  if (!answer.possible) throw new Error(answer.why.message)
  return answer
}

let planned: Solved
beforeAll(() => {
  planned = planner.solved(optionWith())
})

/** Behind the regulator by hand: both sides of two pistons of 40 mm with rods of 16 mm, 200 mm, and their dead volumes. */
const perTrip =
  2 * ((Math.PI / 4) * (0.04 ** 2 + 0.04 ** 2 - 0.016 ** 2) * 0.2 + (2 * 0.00001 * (501_325 - 101_325)) / 501_325)

describe('stored air of a robot through its plan', () => {
  test('leaves at the end what was stored less what the expected trips took', () => {
    // So much that nothing is lost: then each trip takes its volume at the working pressure.
    const { curves, trips, lostAt } = run({ tanks: 20 })
    expect(lostAt).toBeNull()
    const scored = expectedTrips(planned).filter(({ leg }) => leg.kind === 'score')
    const expected = scored.reduce((all, { ended }) => all + ended.reduce((a, b) => a + b, 0), 0)
    expect(trips).toHaveLength(1)
    expect(trips[0]!.expected).toBeCloseTo(expected, 9)
    expect(trips[0]!.freeAir).toBeCloseTo((perTrip * 501_325) / 101_325, 9)
    expect(curves.timeLeft.at(-1)).toBeCloseTo(0, 9)
    const left = curves.pressure.at(-1)! * tank.volume * 20
    expect(left).toBeCloseTo(900_000 * tank.volume * 20 - expected * perTrip * 501_325, 6)
  })

  test('takes what autonomous uses before teleop, and nothing where the way to play has no routine', () => {
    const used = { mechanism: 'dropper', out: 2, back: 2 }
    const option = optionWith({ tanks: 20, autonomous: [used] })
    const before = run({ tanks: 20, autonomous: [used] }).curves.pressure[0]!
    const first = run({ tanks: 20 }).curves.pressure[0]!
    expect(first - before).toBeCloseTo((2 * perTrip * 501_325) / (20 * tank.volume), 3)
    expect(airOfRobot(game, { ...option, auto: null }, option.robot.air!).before.strokes).toEqual([])
    expect(airOfRobot(game, option, option.robot.air!).before.seconds).toBe(18)
  })

  test('is lost later with more tanks, and a second one is never worth less than nothing', () => {
    const worst = run({ autonomous: [{ mechanism: 'dropper', out: 3, back: 3 }] })
    expect(worst.lostAt).toBe(game.clock.teleop)
    let last = worst
    for (const tanks of [1, 2, 4, 20]) {
      const next = run({ tanks })
      expect(next.lostAt ?? -1).toBeLessThanOrEqual(last.lostAt ?? -1)
      // The plan does not know of the loss before it comes, so that a later one can fit its trips a hair worse.
      expect(next.points.withThis).toBeGreaterThanOrEqual(last.points.withThis - 0.002)
      expect(next.points.withOneTankMore).toBeGreaterThanOrEqual(next.points.withThis)
      const bought = run({ tanks: tanks + 1 })
      expect(next.lostWithOneTankMore).toBe(bought.lostAt)
      expect(next.points.withOneTankMore).toBe(Math.max(next.points.withThis, bought.points.withThis))
      expect(next.points.always).toBeCloseTo(planner.value(optionWith()), 6)
      if (next.lostAt !== null) expect(next.lostAtAdiabatic!).toBeGreaterThanOrEqual(next.lostAt)
      last = next
    }
    expect(last.lostAt).toBeNull()
    expect(worst.points.withThis).toBeLessThan(last.points.withThis - 0.1)
  })

  test('lasts where the compressor gives what is drawn, as the closed form of a constant draw says', () => {
    // The plain budget of the same cycles: sustained where the compressor's flow above the working pressure is enough.
    const { budget } = run({ tanks: 4, compressor: { part: compressor, on: 890_000, off: 900_000 } })
    const { answer, cycleSeconds, score } = budget!
    expect(score).toEqual({ kind: 'score', goal: 'pier', entry: 0 })
    const scored = expectedTrips(planned).filter(({ leg }) => leg.kind === 'score')
    expect(cycleSeconds).toBeCloseTo(
      60 / scored.reduce((all, { ended }) => all + ended.reduce((a, b) => a + b, 0), 0),
      9,
    )
    if (!answer.possible) throw new Error(answer.why.message)
    // dp/dt = (10⁵/V)·q(p); between 400 and 1000 kPa q falls from 0.3 to 0.1 l/s in a straight line: an exponential.
    const volume = 4 * tank.volume
    const drop = (501_325 * perTrip) / volume
    const flow = (p: number) => 0.0003 - (0.0002 * (p - 400_000)) / 600_000
    const rate = (0.0002 / 600_000) * (100_000 / volume)
    const seconds = Math.log(flow(501_325) / flow(501_325 + drop)) / rate
    expect(answer.quantities.sustainedSeconds).toBeCloseTo(seconds, 6)
  })

  test('says why it can not be stored so, and what is wrong with the compressor', () => {
    const burst = airPlan(game, optionWith({ stored: 1_100_000 }))
    expect(burst).toMatchObject({ possible: false, why: { code: 'tankOverPressure' } })
    expect(airPlan(game, optionWith({ stored: 400_000 }))).toMatchObject({ why: { code: 'storedTooLow' } })
    const late = run({ compressor: { part: compressor, on: 450_000, off: 1_050_000 } })
    expect(late.warnings.map(({ code }) => code)).toEqual([
      'compressorStartsLate',
      'compressorNeverEnds',
      'compressorOverPressure',
    ])
    expect(() => airPlan(game, ternBest())).toThrow(/no stored air/)
  })
})

test('whatever tanks and pressures are allowed, the answer is one that the contract allows: no number is missing', () => {
  const share = fc.double({ min: 0.01, max: 1.02, noNaN: true })
  const some = fc.record({
    tanks: fc.integer({ min: 1, max: 50 }),
    stored: fc.double({ min: 200_000, max: 2_000_000, noNaN: true }),
    working: share,
    low: share,
    leak: fc.double({ min: 0, max: 0.01, noNaN: true }),
    slower: fc.double({ min: 1, max: 20, noNaN: true }),
    compressor: fc.option(fc.constant({ part: compressor, on: 500_000, off: 900_000 })),
  })
  const seen = new Set<boolean>()
  fc.assert(
    fc.property(some, fc.boolean(), (drawn, follows) => {
      const between = (part: number, most: number) => air.ambient + part * (most - air.ambient)
      const working = between(drawn.working, drawn.stored)
      const change = { ...drawn, working, low: between(drawn.low, working) }
      const option = optionWith({ ...change, tank: { ...tank, highestPressure: 1_900_000 } }, follows)
      if (!contract.safeParse(option.robot).success) return
      const answer = airPlan(game, option, planner)
      seen.add(answer.possible)
      expect(answerContract.parse(answer)).toEqual(answer)
    }),
    { numRuns: 25, seed: 3 },
  )
  expect(seen).toEqual(new Set([true, false]))
})

describe('a stage once the working pressure is lost', () => {
  const low = timing('cylinder', { ...dropper.input, pressure: air.low })
  const own = timing('cylinder', dropper.input)
  if (!low.possible || !own.possible) throw new Error('the example does not move')
  const durationOf = ({ robot }: Option) => {
    const pier = robot.score['pier']![0]!
    return 'stages' in pier ? pier.stages[0]!.duration : null
  }

  test('has its mechanism’s time at the low pressure where it follows it', () => {
    const { option, stages } = slowedByAir(optionWith({}, true), air)
    expect(durationOf(option)).toEqual(low.duration)
    expect(stages).toHaveLength(1)
    expect(stages[0]).toMatchObject({ stage: 'drop', by: 'calculator', slowed: mean(low.duration) })
    expect(stages[0]!.slowed).toBeGreaterThan(mean(own.duration))
  })

  test('with a time of its own is longer in the same measure', () => {
    const { option, stages } = slowedByAir(optionWith(), air)
    const factor = low.seconds / own.seconds
    expect(durationOf(option)).toEqual({ kind: 'lognormal', median: factor, spread: 1.2 })
    expect(stages[0]).toMatchObject({ by: 'ratio' })
    expect(stages[0]!.slowed / stages[0]!.seconds).toBeCloseTo(factor, 12)
  })

  test('takes the factor where the mechanism can not move with so little', () => {
    const { option, stages } = slowedByAir(optionWith({}, true), { ...air, low: 150_000 })
    expect(timing('cylinder', { ...dropper.input, pressure: 150_000 }).possible).toBe(false)
    expect(stages[0]).toMatchObject({ by: 'factor' })
    expect(durationOf(option)).toEqual({ kind: 'lognormal', median: 3, spread: 1.2 })
  })

  test('keeps its time where its own regulator is below, or nothing but motors moves it', () => {
    const weak: Mechanism = { ...dropper, input: { ...dropper.input, pressure: 300_000, load: 20 } }
    const { option, stages } = slowedByAir(optionWith({}, false, weak), air)
    expect(durationOf(option)).toEqual(durationOf(optionWith()))
    expect(stages[0]!.slowed).toBe(stages[0]!.seconds)
  })
})

describe('strokes', () => {
  test('of an arm fill what the calculator says, out and back', () => {
    const answer = timing('pivot', cylinderPivotInput)
    if (!answer.possible) throw new Error(answer.why.message)
    const area = (Math.PI / 4) * 0.04 ** 2
    const ring = (Math.PI / 4) * (0.04 ** 2 - 0.016 ** 2)
    const [out, back] = strokesOf(lifter, { out: 1, back: 1 })
    const volume = ({ stop, deadVolume }: { stop: number | null; deadVolume: number }, piston: number) =>
      piston * stop! + (deadVolume * 400_000) / 501_325
    expect((volume(out!, area) * 501_325) / 101_325).toBeCloseTo(answer.quantities.freeAir!, 12)
    // On the way back the rod's side fills: what it sweeps, and what lies beyond the rod's farthest place.
    const used = answer.quantities.strokeUsed!
    expect(back).toMatchObject({ out: 0, back: 1 })
    expect(volume(back!, ring)).toBeGreaterThan(ring * used)
    expect(volume(back!, ring)).toBeLessThan(ring * 0.2 + 0.00001)
  })

  test('are proposed once for each mechanism of a trip', () => {
    expect(usesByStages(optionWith().robot)).toEqual(air.trips)
  })

  test('of a slim cylinder are fewer than those of a wide one', () => {
    const slim: Mechanism<'cylinder'> = { ...dropper, input: { ...dropper.input, cylinder: slimCylinder } }
    expect(strokesOf(slim, { out: 1, back: 0 })).toEqual([
      { cylinder: slimCylinder, stop: null, deadVolume: 0.00001, out: 2, back: 0 },
    ])
    expect(strokesOf(dropper, { out: 1, back: 0 })[0]!.cylinder).toEqual(wideCylinder)
  })
})

describe('the document', () => {
  test('may hold stored air', () => {
    const { robot } = optionWith()
    expect(contract.parse(robot)).toEqual(robot)
    expect(checkRobot(game, robot)).toEqual([])
  })

  test('says which mechanism or place is not there', () => {
    const { robot } = optionWith({
      trips: [{ leg: { kind: 'score', goal: 'attic', entry: 0 }, mechanism: 'winch', out: 1, back: 1 }],
      autonomous: [{ mechanism: 'winch', out: 1, back: 0 }],
    })
    expect(checkRobot(game, robot).map(({ path, message }) => `${path.join('/')}: ${message}`)).toEqual([
      'air/trips/0/mechanism: There is no mechanism of the robot that air moves with the id “winch”',
      'air/trips/0/leg/goal: There is no goal with the id “attic”',
      'air/autonomous/0/mechanism: There is no mechanism of the robot that air moves with the id “winch”',
    ])
  })

  test('is refused where its pressures contradict each other', () => {
    const messages = (change: Partial<StoredAir>) =>
      contract
        .safeParse(optionWith(change).robot)
        .error?.issues.map(({ path, message }) => `${path.join('/')}: ${message}`)
    expect(messages({ low: 100_000 })).toEqual(['air/low: low must be above ambient (101325), got 100000'])
    expect(messages({ low: 600_000 })).toEqual(['air/low: low must be at most working (501325), got 600000'])
    expect(messages({ compressor: { part: compressor, on: 900_000, off: 800_000 } })).toEqual([
      'air/compressor/on: on must be at most off (800000), got 900000',
    ])
  })
})
