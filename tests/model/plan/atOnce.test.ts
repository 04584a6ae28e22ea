import { describe, expect, it } from 'vitest'
import { standard, variants } from '../../../seed/standard.ts'
import { bestPolicy, bestValue } from '../../../src/model/plan/backward.ts'
import { adjustment, Planner } from '../../../src/model/plan/planner.ts'
import { alwaysAt } from '../../../src/model/plan/problem.ts'
import { startValue } from '../../../src/model/plan/table.ts'

const cases = Object.entries({ standard, ...variants })

/** The pass that notes actions leaves out what can not be best, the one for values alone finds all of it at once. */
describe('values alone, on a grid on which a block is one group of times', () => {
  it.each(cases)('are those of the pass that notes the actions, to the last bit: %s', (_name, { game, option }) => {
    const planner = new Planner(game, 0.25)
    const { problem, table } = planner.solved({ ...option, robot: { ...option.robot, form: { spread: 1 } } })
    const expected = problem.autonomous.expected + adjustment(option) + startValue(problem, table)
    expect(planner.value(option, { form: false })).toBe(expected)
  })

  it.each(cases)('are the same under a call, also where it cuts a block: %s', (_name, { game, option }) => {
    const planner = new Planner(game, 0.25)
    const { problem } = planner.solved({ ...option, robot: { ...option.robot, form: { spread: 1 } } })
    for (const at of [0, 1.25, 17, 20.75]) {
      const rules = alwaysAt(at, 0.25, false)
      expect(bestValue(problem, rules)).toBe(bestPolicy(problem, rules).value)
    }
  })
})
