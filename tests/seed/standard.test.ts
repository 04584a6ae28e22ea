import { describe, expect, it } from 'vitest'
import { type Case, standard, variants } from '../../seed/standard.ts'
import { checkGame, checkOption } from '../../src/model/documents/index.ts'

const cases: [string, Case][] = [['standard', standard], ...Object.entries<Case>(variants)]

describe('the cases that the benchmarks measure', () => {
  it.each(cases)('can be planned: %s', (_, { game, option }) => {
    expect([...checkGame(game), ...checkOption(game, option)]).toEqual([])
  })

  it('are as large as the benchmark says', () => {
    const { game, option } = standard
    const places = [...game.sources, ...game.goals, ...game.finishes]
    expect([option.role.sources.length, option.role.goals.length, option.role.finishes.length]).toEqual([2, 3, 2])
    expect(places.flatMap(({ spots }) => spots)).toHaveLength(12)
    expect(game.goals.flatMap(({ capacity }) => capacity ?? [])).toEqual([12])
    expect(option.robot.carries).toEqual({ buoy: 1 })
    expect(option.robot.form.spread).toBe(1)
    expect(variants.twoGoalsOf12.game.goals.flatMap(({ capacity }) => capacity ?? [])).toEqual([12, 12])
    expect(variants.capacity60.game.goals.flatMap(({ capacity }) => capacity ?? [])).toEqual([60])
    expect(variants.carries30.option.robot.carries).toEqual({ buoy: 30 })
    expect(variants.form115.option.robot.form.spread).toBe(1.15)
  })
})
