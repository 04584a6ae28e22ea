import { describe, expect, test } from 'vitest'
import { breakwater, optionOf } from '../../../seed/index.ts'
import { checkRobot } from '../../../src/model/documents/index.ts'
import type { Robot } from '../../../src/model/documents/types.ts'
import { againstLimits, budgetNotes } from '../../../web/screens/designs/budget.ts'
import { stillThere } from '../../../web/screens/designs/cycle.ts'
import { firstRobot } from '../../../web/screens/designs/firstRobot.ts'
import { collecting, finishing, firstScore, scoring } from '../../../web/screens/designs/firstTrips.ts'

const { game } = breakwater
const { robot } = optionOf('shearwater-best')
const withMass = (mass: number) => ({ ...robot, budget: { mass, cost: 3950, hours: 340, readyBy: '2027-02-19' } })
const said = (mass: number, system: 'metric' | 'inchPound' = 'metric') =>
  againstLimits(game, withMass(mass), system)[0]!.words.replaceAll('\u00a0', ' ')

describe('a budget against the game’s limits of 56 kg', () => {
  test('below, at and over them, in words', () => {
    expect(game.limits?.mass).toBe(56)
    expect(said(54.5)).toBe('54.5 kg of 56 kg; 1.5 kg left.')
    expect(said(56)).toBe('56 kg, exactly the limit.')
    expect(said(58)).toBe('58 kg is 2 kg over the game’s limit of 56 kg.')
  })
  test('in pounds where they are chosen: 58 kg are 127.87 lb, the limit 123.46 lb (at 0.45359237 kg a pound)', () => {
    expect(said(58, 'inchPound')).toBe('127.87 lb is 4.41 lb over the game’s limit of 123.46 lb.')
    expect(said(123.458867 * 0.45359237, 'inchPound')).toBe('123.46 lb, exactly the limit.')
  })
  test('only what is over stands beside a field', () => {
    expect(budgetNotes(game, withMass(54.5), 'metric')).toEqual([])
    expect(budgetNotes(game, withMass(58), 'metric').map(({ path }) => path)).toEqual([['budget', 'mass']])
    const { limits: _, ...free } = game
    expect(budgetNotes(free, withMass(99), 'metric')).toEqual([])
  })
})

describe('what a robot can do', () => {
  const bare: Robot = {
    ...firstRobot(game, 'tern', 'Tern'),
    collect: {},
    score: {},
    finish: {},
    carries: {},
    preload: null,
  }

  test('what it learns fits the game: it carries the pieces that it collects', () => {
    let able = game.sources.reduce((done, { id }) => collecting(game, done, id, true), bare)
    expect(able.carries).toEqual({ buoy: 1 })
    able = game.goals.reduce((done, { id }) => scoring(done, id, [firstScore, firstScore]), able)
    able = game.finishes.reduce((done, { id }) => finishing(done, id, true), able)
    expect(checkRobot(game, able)).toEqual([])
    expect(Object.keys(able.score)).toEqual(game.goals.map(({ id }) => id))
  })
  test('it keeps what it carries, and what it unlearns leaves no trace', () => {
    const able = collecting(game, { ...bare, carries: { buoy: 3 } }, 'outer', true)
    expect(able.carries).toEqual({ buoy: 3 })
    expect(collecting(game, able, 'outer', false).collect).toEqual({})
    expect(scoring(scoring(bare, 'piers', [firstScore]), 'piers', []).score).toEqual({})
    expect(finishing(finishing(bare, 'davit', true), 'davit', false).finish).toEqual({})
  })
  test('a trip on the strip that it no longer does gives way to one that it does, or to none', () => {
    const option = optionOf('shearwater-best')
    const cycle = {
      source: 'channel',
      sourceSpot: 'channel.ramp',
      load: 1,
      goal: 'gantry',
      entry: 1,
      goalSpot: 'gantry.mark',
    }
    expect(stillThere(game, option, cycle)).toBe(cycle)
    const without = { ...option, robot: collecting(game, option.robot, 'channel', false) }
    expect(stillThere(game, without, cycle)).toMatchObject({ source: 'outer' })
    const none = { ...without, robot: collecting(game, without.robot, 'outer', false) }
    expect(stillThere(game, none, cycle)).toBeNull()
  })
})
