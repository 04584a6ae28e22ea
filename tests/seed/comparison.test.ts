import { describe, expect, it } from 'vitest'
import { hinge, request } from '../../seed/comparison.ts'
import { comparisonAir, comparisonResult } from '../../seed/comparisonResult.ts'
import { breakwater } from '../../seed/index.ts'
import { applyInput } from '../../src/model/compare/index.ts'
import { Planner } from '../../src/model/plan/index.ts'
import { airPlan, keptAir } from '../../src/model/timing/index.ts'

const input = request.inputs!.find(({ id }) => id === hinge)!

/** Points by which the sister without the hook leads, computed anew with the input at a value. */
function lead(value: number): number {
  const { game, options } = applyInput({ game: request.game, options: request.options }, input, value)
  const planner = new Planner(game)
  const [hook, practice] = options.map((option) => planner.value(option))
  return practice! - hook!
}

describe('the open question of the season', () => {
  it('has a close answer: half a point to two and a half', () => {
    const leads = lead(input.likely)
    expect(leads).toBeGreaterThan(0.5)
    expect(leads).toBeLessThan(2.5)
  })

  it('hinges on a number that can be measured, and turns within what is thought possible', () => {
    expect(input.perMeasurement).toBeGreaterThan(0)
    expect(lead(input.low)).toBeGreaterThan(0)
    expect(lead(input.high)).toBeLessThan(0)
  })

  it('has a stored answer that the model still gives', () => {
    const [hook, practice] = comparisonResult.options
    expect(practice!.mean - hook!.mean).toBeCloseTo(lead(input.likely), 2)
    const [crossing, ...others] = comparisonResult.breakEven!.crossings
    expect(others).toEqual([])
    expect(lead(crossing!.value)).toBeCloseTo(0, 2)
    for (const { input: id, low, high, difference } of comparisonResult.swing!) {
      if (id !== hinge) continue
      expect(difference[0]).toBeCloseTo(lead(low), 2)
      expect(difference[1]).toBeCloseTo(lead(high), 2)
    }
  })

  it('has inputs that each change something, at paths that exist', () => {
    expect(request.inputs!.length).toBeGreaterThanOrEqual(6)
    expect(comparisonResult.swing!.map(({ input: id }) => id).toSorted()).toEqual(
      request.inputs!.map(({ id }) => id).toSorted(),
    )
    for (const { difference, input: id } of comparisonResult.swing!) {
      expect(Math.abs(difference[0] - difference[1]), id).toBeGreaterThan(0.01)
    }
  })

  // Break-even and swing hold the other inputs at their likely values; the headline is that of the documents as written.
  it('has likely values that are those of the designs as they stand', () => {
    for (const each of request.inputs!) {
      const { options } = applyInput({ game: request.game, options: request.options }, each, each.likely)
      expect(options, each.id).toEqual(request.options)
    }
  })

  it('is decided in words whose numbers are those of the computed answer', () => {
    const { decision } = breakwater
    const best = comparisonResult.options.reduce((a, b) => (b.mean > a.mean ? b : a))
    expect(decision.chosen).toBe(best.id)
    for (const { mean } of comparisonResult.options) expect(decision.result).toContain(mean.toFixed(1))
    expect(decision.snapshot.result).toEqual(comparisonResult)
  })

  it('keeps in its decision what stored air does, as the model still gives it', () => {
    const { snapshot } = breakwater.decision
    const stored = request.options.filter(({ robot }) => robot.air)
    expect(stored.map(({ id }) => id)).toEqual(comparisonAir.map(({ option }) => option))
    for (const [index, option] of stored.entries()) {
      const now = keptAir(option.id, airPlan(request.game, option))
      expect(now.lostAt).toBeCloseTo(comparisonAir[index]!.lostAt!, 6)
      expect(now.cost).toBeCloseTo(comparisonAir[index]!.cost, 6)
    }
    expect([snapshot.air, snapshot.tradeOff]).toEqual([comparisonAir, breakwater.comparison.name])
  })

  it('says in its decision how people get hurt by a lifted robot, and what is done about it', () => {
    const words = JSON.stringify(breakwater.decision)
    expect(words).toMatch(/two people/)
    expect(words).toMatch(/support/)
    expect(words).toMatch(/rules and the mentor responsible for safety decide/)
  })
})
