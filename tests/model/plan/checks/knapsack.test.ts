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

  /** Each item is a goal with room for one; half a tick of the first is for taking the piece. */
  const items = (of: { capacity: number; weights: number[]; profits: number[]; tick: number }) => {
    const game = smallGame({
      teleop: (of.capacity * of.tick) / 10,
      sources: [{ id: 'source' }],
      goals: of.profits.map((points, i) => ({ id: `item${i}`, points, capacity: 1 })),
    })
    const robot = bareRobot({
      collect: { source: collecting(fixed(0.1)) },
      score: Object.fromEntries(
        of.weights.map((weight, i) => [`item${i}`, scoring(fixed((of.tick * weight - 1) / 10))]),
      ),
    })
    return () => plan(game, optionFor(game, robot)).expected.total
  }

  // Burkardt's KNAPSACK_01 P01 from memory, its optimum 309 recomputed by dynamic programming and HiGHS (check 3.6a).
  it('ten items, each to be taken once: 309 in a knapsack of 165', () => {
    const weights = [23, 31, 29, 44, 53, 38, 63, 85, 89, 82]
    const profits = [92, 57, 49, 68, 60, 43, 67, 84, 87, 72]
    expect(items({ capacity: 165, weights, profits, tick: 2 })()).toBeCloseTo(309, 9)
  })

  // P07 and P08 of the same collection (checks 3.6b and 3.6c, optima 1458 and 13549094): which of 15 or 24 items are
  // taken makes 2^15 and 2^24 rooms, too many for an exact table, whatever order the items come in.
  it.each([
    {
      capacity: 750,
      weights: [70, 73, 77, 80, 82, 87, 90, 94, 98, 106, 110, 113, 115, 118, 120],
      profits: [135, 139, 149, 150, 156, 163, 173, 184, 192, 201, 210, 214, 221, 229, 240],
    },
    {
      capacity: 6404180,
      weights: [
        382745, 799601, 909247, 729069, 467902, 44328, 34610, 698150, 823460, 903959, 853665, 551830, 610856, 670702,
        488960, 951111, 323046, 446298, 931161, 31385, 496951, 264724, 224916, 169684,
      ],
      profits: [
        825594, 1677009, 1676628, 1523970, 943972, 97426, 69666, 1296457, 1679693, 1902996, 1844992, 1049289, 1252836,
        1319836, 953277, 2067538, 675367, 853655, 1826027, 65731, 901489, 577243, 466257, 369261,
      ],
    },
  ])('$weights.length items in a knapsack of $capacity are refused in a sentence, at once', (knapsack) => {
    const before = performance.now()
    expect(items({ ...knapsack, tick: 1 })).toThrow(
      expect.objectContaining({
        code: 'overBudget',
        message: expect.stringMatching(/would need \d+ states, more than/),
      }),
    )
    expect(performance.now() - before).toBeLessThan(5000)
  })
})
