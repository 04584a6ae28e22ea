import { describe, expect, it } from 'vitest'
import { plan } from '../../../../src/model/plan/index.ts'
import { bareRobot, collecting, finishing, fixed, optionFor, scoring, smallGame } from './smallGame.ts'

interface Cycle {
  ticks: number
  points: number
  limit: number | null
}

interface Knapsack {
  tick: number
  ticks: number
  cycles: Cycle[]
  terminals: { ticks: number; points: number }[]
}

/** Each kind of cycle has its own source, piece and goal, so that a whole cycle is chosen or none of it. */
function value({ tick, ticks, cycles, terminals }: Knapsack): number {
  const game = smallGame({
    teleop: (ticks * Math.round(tick * 10)) / 10,
    sources: cycles.map((_, i) => ({ id: `source${i}`, piece: `piece${i}` })),
    goals: cycles.map(({ points, limit }, i) => ({ id: `goal${i}`, pieces: [`piece${i}`], points, capacity: limit })),
    finishes: terminals.map(({ points }, i) => ({ id: `finish${i}`, points })),
  })
  const robot = bareRobot({
    carries: Object.fromEntries(cycles.map((_, i) => [`piece${i}`, 1])),
    collect: Object.fromEntries(cycles.map((cycle, i) => [`source${i}`, collecting(fixed(cycle.ticks * tick - 0.1))])),
    score: Object.fromEntries(cycles.map((_, i) => [`goal${i}`, scoring(fixed(0.1))])),
    finish: Object.fromEntries(terminals.map((end, i) => [`finish${i}`, finishing(fixed(end.ticks * tick))])),
  })
  return plan(game, optionFor(game, robot)).expected.total
}

// Optima by scipy 1.17.1's milp (HiGHS), equal to exhaustive enumeration; theory: Kellerer, Pferschy & Pisinger,
// Knapsack Problems (2004), chapters 7 (bounded) and 8 (unbounded). Cases 3.7a-e of the list of outside checks.
describe('deterministic cycles with one optional terminal action are an integer knapsack', () => {
  it.each<[string, number, Knapsack]>([
    [
      'ten slow cycles, a fast one, then the terminal: 10 · 5 + 2 + 15',
      67,
      {
        tick: 1,
        ticks: 150,
        cycles: [
          { ticks: 12, points: 5, limit: null },
          { ticks: 7, points: 2, limit: null },
        ],
        terminals: [{ ticks: 20, points: 15 }],
      },
    ],
    [
      'five of the second kind, one of the limited third, then the first terminal: 5 · 7 + 10 + 12',
      57,
      {
        tick: 1,
        ticks: 135,
        cycles: [
          { ticks: 11, points: 4, limit: null },
          { ticks: 17, points: 7, limit: null },
          { ticks: 23, points: 10, limit: 3 },
        ],
        terminals: [
          { ticks: 25, points: 12 },
          { ticks: 14, points: 5 },
        ],
      },
    ],
    [
      'a terminal worth as much as the cycle that it displaces: 10 · 3 + 3',
      33,
      {
        tick: 1,
        ticks: 100,
        cycles: [{ ticks: 9, points: 3, limit: null }],
        terminals: [{ ticks: 10, points: 3 }],
      },
    ],
    [
      'nothing that fits',
      0,
      { tick: 1, ticks: 30, cycles: [{ ticks: 31, points: 100, limit: null }], terminals: [{ ticks: 31, points: 50 }] },
    ],
    [
      'tenths of a second, no terminal: 40 + 2 · 29 + 7 · 55',
      483,
      {
        tick: 0.1,
        ticks: 1350,
        cycles: [
          { ticks: 113, points: 40, limit: null },
          { ticks: 87, points: 29, limit: 5 },
          { ticks: 151, points: 55, limit: null },
        ],
        terminals: [{ ticks: 205, points: 60 }],
      },
    ],
  ])('%s', (_, optimum, knapsack) => {
    expect(value(knapsack)).toBeCloseTo(optimum, 9)
  })

  // Burkardt's KNAPSACK_01 P01 from memory, its optimum 309 recomputed by dynamic programming and HiGHS (check 3.6a).
  // Each item is a goal with room for one; a tick of the knapsack is 0.2 s, half of the first for taking the piece.
  it('ten items, each to be taken once: 309 in a knapsack of 165', () => {
    const weights = [23, 31, 29, 44, 53, 38, 63, 85, 89, 82]
    const profits = [92, 57, 49, 68, 60, 43, 67, 84, 87, 72]
    const game = smallGame({
      teleop: 33,
      sources: [{ id: 'source' }],
      goals: profits.map((points, i) => ({ id: `item${i}`, points, capacity: 1 })),
    })
    const robot = bareRobot({
      collect: { source: collecting(fixed(0.1)) },
      score: Object.fromEntries(weights.map((ticks, i) => [`item${i}`, scoring(fixed((2 * ticks - 1) / 10))])),
    })
    expect(plan(game, optionFor(game, robot)).expected.total).toBeCloseTo(309, 9)
  })
})
