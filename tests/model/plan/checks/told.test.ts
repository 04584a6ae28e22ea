import fc from 'fast-check'
import { expect, it } from 'vitest'
import type { Option } from '../../../../src/model/documents/types.ts'
import { legValue } from '../../../../src/model/plan/evaluate.ts'
import { Planner } from '../../../../src/model/plan/index.ts'
import type { Problem } from '../../../../src/model/plan/problem.ts'
import { type Policy, stop, type Values, wait } from '../../../../src/model/plan/table.ts'
import { evaluatePolicy, withValuesAhead } from '../../../../src/model/plan/told.ts'
import { propertyCase } from './propertyCase.ts'

const finish: fc.Arbitrary<Option['finish']> = fc.oneof(
  fc.constant({ mode: 'best' as const }),
  fc.constant({ mode: 'skip' as const }),
  fc.integer({ min: 0, max: 30 }).map((at) => ({ mode: 'always' as const, at: at / 2 })),
)

const drawnCase = fc.record({ drawn: propertyCase, finish }).map(({ drawn, finish }) => {
  const robot = { ...drawn.option.robot, form: { spread: 1.3 } }
  return { game: drawn.game, option: { ...drawn.option, robot, finish } }
})

/** The largest difference between a value and that of the action told there, over all rooms that can be met. */
function residual(problem: Problem, policy: Policy, values: Values): number {
  const { rooms, graph, steps, rules } = problem
  let worst = 0
  for (const [n, node] of graph.nodes.entries())
    for (let r = 0; r < rooms.size; r++)
      for (let t = 0; t <= steps; t++) {
        const met = rooms.most.every((_, d) => {
          const room = rooms.room(r, d)
          return room >= (rooms.low[d]?.[t] as number) && room <= (rooms.high[d]?.[t] as number)
        })
        if (!met) continue
        const value = (left: number) => values.values[n]?.[r * values.row + values.pad + left] as number
        const action = policy.actions[n]?.[r * policy.row + policy.pad + t] as number
        let expected: number | null = 0
        if (action === wait) expected = value(rules.finishFrom)
        else if (action !== stop) expected = legValue(problem, values, node.legs[action] as never, r, t)
        worst = Math.max(worst, Math.abs(value(t) - (expected ?? Number.POSITIVE_INFINITY)))
      }
  return worst
}

// What a policy is worth is the one solution of these equations; where play can not come to, nobody asks for it.
it('every value of a given policy is that of the action told there, and first actions need no more than what is ahead', () => {
  let waits = 0
  let first = 0
  fc.assert(
    fc.property(drawnCase, ({ game, option }) => {
      const { forms, table } = new Planner(game, 0.25).solved(option)
      for (const { problem, factor } of forms) {
        if (factor === 1) continue
        const { graph, rooms, autonomous, steps } = problem
        const values = evaluatePolicy(problem, table)
        expect(residual(problem, table, values)).toBeLessThan(1e-9)
        for (const leg of graph.nodes[graph.initial]?.legs ?? [])
          for (const { room } of autonomous.outcomes) {
            const of = (found: Values) => legValue(problem, found, leg, rooms.index(room), steps)
            expect(withValuesAhead(problem, table, of)).toBe(of(values))
            first++
          }
      }
      if (table.actions.some((actions) => actions.includes(wait))) waits++
    }),
    { numRuns: 16, seed: 11 },
  )
  expect(first).toBeGreaterThan(100)
  expect(waits).toBeGreaterThan(1)
})
