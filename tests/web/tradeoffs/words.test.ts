import { describe, expect, test } from 'vitest'
import { breakwater, optionOf } from '../../../seed/index.ts'
import { applyInput } from '../../../src/model/compare/index.ts'
import type { BeliefReport, Input } from '../../../src/model/compare/types.ts'
import { mean } from '../../../src/model/duration/index.ts'
import { inputAxis } from '../../../web/screens/tradeoffs/axis.ts'
import { candidates } from '../../../web/screens/tradeoffs/candidates.ts'
import { nextWords } from '../../../web/screens/tradeoffs/next.ts'
import { practiceChoices, practiceInput } from '../../../web/screens/tradeoffs/practiceChoices.ts'
import { idleWords, turnWords } from '../../../web/screens/tradeoffs/turnWords.ts'
import { inputWords } from '../../../web/words/inputs.ts'
import { practiceOf } from '../../../web/words/practice.ts'
import { done } from '../../model/timing/ask.ts'

const nbsp = '\u00a0'
const { game } = breakwater
const options = [optionOf('shearwater-best'), optionOf('kittiwake-best')]
const documents = { game, options }
const [with_, without] = ['shearwater-best', 'kittiwake-best'] as const
const hang: Input = {
  id: 'Hang success',
  paths: ['/options/0/robot/finish/davit/success'],
  as: 'value',
  low: 0.55,
  likely: 0.7,
  high: 0.8,
  perMeasurement: 0.46,
}
const latch: Input = {
  id: 'Latch time',
  paths: ['/options/0/robot/finish/davit/stages/2/duration'],
  as: 'factor',
  low: 0.6,
  likely: 1,
  high: 1.8,
  perMeasurement: 0.5,
}
const crossing = (value: number, from: string, to: string) => ({ value, from, to, jump: false })

describe('where one unknown turns the answer, in words', () => {
  test('says as long as which values each option pays, and what is believed', () => {
    const turn = { input: hang.id, crossings: [crossing(0.62, without, with_)], bestAtLow: without, leastLead: 0 }
    expect(turnWords(turn, hang, documents)).toEqual([
      `‘Kittiwake, finish when it pays’ pays as long as ‘Hang success’ comes to less than 62${nbsp}% of tries; you believe 55${nbsp}% to 80${nbsp}%, most likely 70${nbsp}%.`,
      `‘Shearwater, finish when it pays’ pays as long as ‘Hang success’ comes to more than 62${nbsp}% of tries.`,
    ])
    // A number that nobody has named is not believed, only looked at.
    expect(turnWords(turn, hang, documents, false)[0]).toContain(
      `of tries; looked at from 55${nbsp}% to 80${nbsp}%, now 70${nbsp}%.`,
    )
  })

  test('joins the parts of the range in which the same option pays, and says that a jump is one', () => {
    const turn = {
      input: latch.id,
      crossings: [crossing(0.8, with_, without), { ...crossing(1.2, without, with_), jump: true }],
      bestAtLow: with_,
      leastLead: 0,
    }
    const [first, second, third] = turnWords(turn, latch, documents)
    expect(first).toContain(`is less than ×${nbsp}0.8 or more than ×${nbsp}1.2; you believe ×${nbsp}0.6 to ×${nbsp}1.8`)
    expect(second).toContain(`is between ×${nbsp}0.8 and ×${nbsp}1.2.`)
    expect(third).toContain('jump')
  })

  test('says that nothing turns, and what lead is left of what does not matter', () => {
    const turn = { input: latch.id, crossings: [], bestAtLow: without, leastLead: 0.37 }
    expect(turnWords(turn, latch, documents)).toEqual([
      `‘Kittiwake, finish when it pays’ stays the best: it does not turn on ‘Latch time’ anywhere between ×${nbsp}0.6 and ×${nbsp}1.8.`,
    ])
    // What is shown of the lead is nothing: then nothing 'stays the best'.
    expect(turnWords({ ...turn, leastLead: 0.04 }, latch, documents)).toEqual([
      `No value of ‘Latch time’ between ×${nbsp}0.6 and ×${nbsp}1.8 puts another option ahead of ‘Kittiwake, finish when it pays’, but in places the best two are level.`,
    ])
    expect(idleWords(turn, latch, documents)).toBe(
      `‘Latch time’, anywhere from ×${nbsp}0.6 to ×${nbsp}1.8: the lead stays at least 0.4 points.`,
    )
    expect(idleWords({ ...turn, leastLead: 0.04 }, latch, documents)).toContain('by less than 0.1 points in places')
  })
})

describe('days less practice', () => {
  const choices = practiceChoices(game, options, 1)
  const days = [0, 4, 10] as const
  const pace = practiceInput(choices[0]!, { robot: 'Kittiwake', perDay: 0.015, days })

  test('is an ordinary factor on the pace: ten days of 1.5 % each make it 1.15', () => {
    expect(pace).toEqual({
      id: 'Kittiwake: days less practice (pace), 1 d = 1.5 %',
      paths: ['/options/1/robot/drive/pace'],
      as: 'factor',
      low: 1,
      likely: 1.06,
      high: 1.15,
    })
  })

  test('is read and told in days, in its name without the share and in each value', () => {
    const words = inputWords(pace, documents)
    expect(words.name).toBe('Kittiwake: days less practice (pace)')
    expect(words.about).toContain(`a day is worth 1.5${nbsp}%`)
    expect([1, 1.015, 1.06].map(words.say)).toEqual([`0${nbsp}days less`, `1${nbsp}day less`, `4${nbsp}days less`])
    const axis = inputAxis(pace, documents)
    expect([axis.low, axis.likely, axis.high]).toEqual([0, 4, 10])
    expect(axis.back(6)).toBeCloseTo(1.09, 12)
  })

  test('on a success falls with each day, and is told the right way round: fewer days are a larger success', () => {
    const gantry = choices.find(({ id }) => id === 'gantry')!
    expect(gantry.paths).toEqual(['/options/1/robot/score/gantry/0/success', '/options/1/robot/score/gantry/1/success'])
    const success = practiceInput(gantry, { robot: 'Kittiwake', perDay: 0.02, days })
    expect([success.low, success.likely, success.high]).toEqual([0.8, 0.92, 1])
    // Below a factor of 0.9, so with more than 5 days less, the other is best.
    const turn = { input: success.id, crossings: [crossing(0.9, with_, without)], bestAtLow: with_, leastLead: 0 }
    const [worse, better] = turnWords(turn, success, documents)
    expect(worse).toContain(`is more than 5${nbsp}days less; you believe 0${nbsp}days less to 10${nbsp}days less`)
    expect(better).toContain(`is less than 5${nbsp}days less.`)
  })

  test('comes back from its days to the same number, for every share', () => {
    for (const perDay of [0.001, 0.0123, 0.3]) {
      const input = practiceInput(choices[1]!, { robot: 'A', perDay, days: [0, 1, 2] })
      const practice = practiceOf(input)!
      expect(practice.perDay).toBeCloseTo(perDay, 14)
      for (const day of [0, 0.5, 7, 30]) expect(practice.days(practice.value(day))).toBeCloseTo(day, 6)
    }
  })

  test('is nothing that a plain factor with another name is taken for', () => {
    expect(practiceOf(latch)).toBeNull()
    expect(practiceOf({ ...pace, as: 'add' })).toBeNull()
    expect(practiceOf({ ...pace, id: 'Pace, 1 d = 0 %' })).toBeNull()
  })
})

describe('what to measure next, in words', () => {
  const belief = (evsi: BeliefReport['evsi']) => ({ evsi }) as BeliefReport

  test('is tried or timed, with the fewest measurements that bring four fifths of the most, and the next after it', () => {
    const found = nextWords(
      belief({
        'Hang success': [
          [6, 0.2],
          [12, 0.3],
          [24, 0.35],
        ],
        'Latch time': [
          [6, 1.2],
          [12, 1.9],
          [24, 2.2],
        ],
      }),
      [hang, latch],
      documents,
    )
    expect(found).toEqual([
      'Time ‘Latch time’ 12 more times before deciding: worth 1.9 points per match.',
      'After that: Try ‘Hang success’ 12 more times before deciding: worth 0.3 points per match.',
    ])
  })

  test('is nothing where nothing is worth 0.1 points, or where no unknown has a spread of one measurement', () => {
    expect(nextWords(belief({ 'Latch time': [[6, 0.04]] }), [latch], documents)).toEqual([
      'No measurement of one unknown alone is worth as much as 0.1 points per match.',
    ])
    expect(nextWords(belief({}), [latch], documents)[0]).toContain('No unknown has a spread')
  })
})

test('what hardware leaves unknown about times that follow it is one unknown, in place of guesses about them', () => {
  const option = optionOf('shearwater-best')
  const { robot } = option
  const follows = (trip: (typeof robot.collect)[string]) =>
    'stages' in trip
      ? {
          ...trip,
          stages: trip.stages.map((stage) =>
            stage.hardware ? { ...stage, hardware: { ...stage.hardware, follows: true } } : stage,
          ),
        }
      : trip
  const collect = Object.fromEntries(Object.entries(robot.collect).map(([id, trip]) => [id, follows(trip)]))
  const mechanisms = robot.mechanisms!.map((mechanism) =>
    mechanism.calculator === 'rollers'
      ? {
          ...mechanism,
          input: { ...mechanism.input, grip: { kind: 'range', low: 2.2, likely: 3, high: 5, of: 'level' } },
        }
      : mechanism,
  ) as NonNullable<typeof robot.mechanisms>
  const rollers = mechanisms.find(({ id }) => id === 'intake-rollers')!
  const { belief, seconds } = done('rollers', rollers.input as never)
  const unknowns = (mechanisms: typeof robot.mechanisms) =>
    candidates({ game, options: [{ ...option, robot: { ...robot, collect, mechanisms: mechanisms! } }] })
  const [first, ...others] = unknowns(mechanisms)
  expect(first).toMatchObject({ id: 'Shearwater: time of ‘Intake rollers’, by its hardware', as: 'factor', likely: 1 })
  expect(first!.paths).toEqual(
    ['outer', 'channel'].map((source) => `/options/0/robot/collect/${source}/stages/2/duration`),
  )
  expect(first!.low).toBeCloseTo(belief!.low / seconds, 2)
  expect(first!.high).toBeCloseTo(belief!.high / seconds, 2)
  expect(first!.low).toBeLessThan(0.95)
  expect(first!.high).toBeGreaterThan(1.05)
  expect(others.flatMap(({ paths }) => paths)).not.toContain(first!.paths[0])
  // An unknown that is a factor on several times can be computed with.
  const changed = applyInput(documents, first!, 2).options[0]!.robot.collect['outer']!
  const before = robot.collect['outer']!
  if (!('stages' in changed && 'stages' in before)) throw new Error('no stages')
  expect(mean(changed.stages[2]!.duration)).toBeCloseTo(2 * mean(before.stages[2]!.duration), 9)
  // Spreads from trip to trip are in the times themselves.
  expect(unknowns(robot.mechanisms).filter(({ id }) => id.includes('by its hardware'))).toEqual([])
})

test('numbers of the robots that are called alike are told apart: the gantry can be scored at in two ways', () => {
  const ids = candidates(documents).map(({ id }) => id)
  expect(new Set(ids).size).toBe(ids.length)
  expect(ids).toContain('Shearwater: success at Gantry')
  expect(ids).toContain('Shearwater: success at Gantry, way 2')
})
