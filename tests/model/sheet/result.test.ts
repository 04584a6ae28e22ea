import { describe, expect, test } from 'vitest'
import { breakwater } from '../../../seed/index.ts'
import { checkOption, checkQuickSheet } from '../../../src/model/documents/index.ts'
import { Planner } from '../../../src/model/plan/index.ts'
import {
  atStrength,
  changes,
  onePerPlace,
  optionOf,
  order,
  strengthsAtFirst,
  wayResult,
} from '../../../src/model/sheet/index.ts'
import { harbour } from '../documents/harbour.ts'
import { lowWay, seconds, sheetOf } from './sheets.ts'

const game = harbour()
const planner = new Planner(game)

describe('points of a way by hand: 60 s, a piece in hand, 4 s to score and 6 s to collect', () => {
  test('pieces count at 4, 14, 24, 34, 44 and 54 s: 6 × 3 points', () => {
    expect(wayResult(planner, game, lowWay())).toMatchObject({ points: expect.closeTo(18, 9), finish: 0 })
    expect(wayResult(planner, game, lowWay()).trips).toBeCloseTo(6, 9)
  })

  test('a finish of 5 s and 10 points still fits behind the sixth piece', () => {
    const result = wayResult(planner, game, lowWay({ finish: 'davit' }))
    expect(result.points).toBeCloseTo(28, 9)
    expect(result.finish).toBeCloseTo(10, 9)
  })

  test('played weakly all takes 1.4 times as long and succeeds in 80 %: at 5.6, 19.6, 33.6 and 47.6 s', () => {
    const weak = atStrength(lowWay({ finish: 'davit' }), strengthsAtFirst.weak)
    expect(wayResult(planner, game, weak).points).toBeCloseTo(4 * 0.8 * 3 + 0.8 * 10, 6)
    expect(wayResult(planner, game, weak).trips).toBeCloseTo(4, 6)
  })

  test('two pieces a trip: one at 4 s, then pairs at 14 s and 24 s, and a single one that the pier still has room for', () => {
    const result = wayResult(planner, game, lowWay({ load: 2 }))
    expect(result.points).toBeCloseTo(18, 6)
  })

  test('points by hand are added as they are, at every strength', () => {
    expect(wayResult(planner, game, lowWay({ extra: 7.5 })).points).toBeCloseTo(25.5, 9)
    const weak = atStrength(lowWay({ extra: 7.5 }), strengthsAtFirst.weak)
    expect(wayResult(planner, game, weak).points).toBeCloseTo(4 * 0.8 * 3 + 7.5, 6)
  })

  test('a goal that pays for holding pays the seconds that the sheet says', () => {
    const held = wayResult(planner, game, lowWay({ goals: ['mast'], holdSeconds: 3 }))
    expect(held.points).toBeCloseTo(6 * 3, 6)
  })
})

test('a chance of success stays at 1 however strongly it is played', () => {
  const strong = atStrength(lowWay({ score: { ...seconds(4), success: 0.95 } }), { times: 1, success: 1.2 })
  expect(strong.score.success).toBe(1)
})

test('a range is stretched as a whole', () => {
  const range = { kind: 'range', low: 4, likely: 6, high: 10 } as const
  const way = lowWay({ collect: { time: range, belief: null } })
  expect(atStrength(way, { times: 0.5, success: 1 }).collect.time).toEqual({
    kind: 'range',
    low: 2,
    likely: 3,
    high: 5,
  })
})

test('one spot per place gives the same points on the season’s field as all of them', () => {
  const way = lowWay({
    sources: ['outer', 'channel'],
    goals: ['piers', 'gantry'],
    finish: 'dry-dock',
    collect: seconds(7.3),
    score: { ...seconds(5.1), success: 0.8 },
  })
  const whole = wayResult(new Planner(breakwater.game), breakwater.game, way).points
  const small = onePerPlace(breakwater.game)
  expect(wayResult(new Planner(small), small, way).points).toBeCloseTo(whole, 9)
})

test('the design and the option that a way grows into are sound', () => {
  expect(checkOption(game, optionOf(game, lowWay({ goals: ['pier', 'mast'], finish: 'davit' })))).toEqual([])
})

describe('the order', () => {
  const one = [
    { id: 'a', points: 20 },
    { id: 'b', points: 18 },
    { id: 'c', points: 18.04 },
  ]
  test('is best first, and what a screen shows alike keeps the sheet’s order', () => {
    expect(order(one)).toEqual(['a', 'b', 'c'])
  })
  test('changes where a pair stands the other way round, and not where it only becomes even', () => {
    const other = [
      { id: 'a', points: 10 },
      { id: 'b', points: 10.2 },
      { id: 'c', points: 10 },
    ]
    expect(changes(one, other)).toEqual([['a', 'b']])
    expect(changes(one, one)).toEqual([])
  })
})

test('what a sheet gets wrong is named with its path', () => {
  const ways = [
    lowWay({ sources: ['nowhere'], finish: 'moon' }),
    lowWay({ goals: ['pier', 'pier'] }),
    lowWay({ id: 'other', goals: ['mast'] }),
  ]
  const nets = harbour()
  nets.goals[1]!.accepts = ['net']
  expect(checkQuickSheet(nets, sheetOf(ways)).map(({ path }) => path.join('/'))).toEqual([
    'ways/1/id',
    'ways/0/sources/0',
    'ways/0/finish',
    'ways/1/goals/1',
    'ways/2/goals/0',
  ])
})
