import { describe, expect, it } from 'vitest'
import type { Stage } from '../../../src/model/documents/types.ts'
import { distributionOf } from '../../../src/model/duration/index.ts'
import { networkOf, schedule } from '../../../src/model/leg/index.ts'

type Row = [id: string, after: string, range: [number, number, number], times: [number, number, number, number]]

/** Earliest start and finish, latest start and finish; the drive takes no time here. */
const textbooks: { source: string; length: number; critical: string; rows: Row[] }[] = [
  {
    source:
      'Render, Stair & Hanna, Quantitative Analysis for Management, and Heizer & Render, Operations Management ch. 3 (from memory, recomputed): General Foundry, 15 weeks by A-C-E-G-H',
    length: 15,
    critical: 'ACEGH',
    rows: [
      ['A', '', [1, 2, 3], [0, 2, 0, 2]],
      ['B', '', [2, 3, 4], [0, 3, 1, 4]],
      ['C', 'A', [1, 2, 3], [2, 4, 2, 4]],
      ['D', 'B', [2, 4, 6], [3, 7, 4, 8]],
      ['E', 'C', [1, 4, 7], [4, 8, 4, 8]],
      ['F', 'C', [1, 2, 9], [4, 7, 10, 13]],
      ['G', 'D,E', [3, 4, 11], [8, 13, 8, 13]],
      ['H', 'F,G', [1, 2, 3], [13, 15, 13, 15]],
    ],
  },
  {
    source:
      'a textbook exercise with 14 activities, its first six rows as printed at wizedu.com/questions/717873, the others recomputed: 305/6',
    length: 305 / 6,
    critical: 'ACEHIKMN',
    rows: [
      ['A', '', [5, 5, 7], [0, 16 / 3, 0, 16 / 3]],
      ['B', '', [1, 2, 5], [0, 7 / 3, 8, 31 / 3]],
      ['C', 'A', [5, 5, 5], [16 / 3, 31 / 3, 16 / 3, 31 / 3]],
      ['D', 'A', [4, 8, 13], [16 / 3, 13.5, 43 / 6, 46 / 3]],
      ['E', 'B,C', [1, 10, 17], [31 / 3, 20, 31 / 3, 20]],
      ['F', 'D', [1, 5, 7], [13.5, 109 / 6, 46 / 3, 20]],
      ['G', 'D', [2, 6, 9], [13.5, 58 / 3, 18.5, 73 / 3]],
      ['H', 'E,F', [4, 4, 6], [20, 73 / 3, 20, 73 / 3]],
      ['I', 'G,H', [2, 7, 10], [73 / 3, 31, 73 / 3, 31]],
      ['J', 'I', [2, 4, 7], [31, 211 / 6, 33.5, 113 / 3]],
      ['K', 'I', [6, 10, 13], [31, 245 / 6, 31, 245 / 6]],
      ['L', 'J', [2, 6, 6], [211 / 6, 40.5, 113 / 3, 43]],
      ['M', 'K', [2, 2, 3], [245 / 6, 43, 245 / 6, 43]],
      ['N', 'L,M', [7, 7, 12], [43, 305 / 6, 43, 305 / 6]],
    ],
  },
]

const stages = (rows: readonly (readonly [string, string])[]): Stage[] =>
  rows.map(([id, after]) => ({
    id,
    name: id,
    duration: { kind: 'fixed', seconds: 0 },
    after: after ? after.split(',') : [],
  }))

describe('critical path, at the mean durations of ranges', () => {
  it.each(textbooks)('$source', ({ length, critical, rows }) => {
    const network = networkOf(stages(rows.map(([id, after]) => [id, after])))
    const means = rows.map(([, , [low, likely, high]]) => distributionOf({ kind: 'range', low, likely, high }).mean)
    const plan = schedule(network, [0, ...means])
    expect(plan.length).toBeCloseTo(length, 9)
    const parts = ['earliestStart', 'earliestFinish', 'latestStart', 'latestFinish'] as const
    for (const [i, [id, , , times]] of rows.entries())
      for (const [part, time] of times.entries())
        expect(plan[parts[part]!][i + 1], `${id} ${parts[part]}`).toBeCloseTo(time, 9)
    const found = rows.filter((_, i) => plan.latestStart[i + 1]! - plan.earliestStart[i + 1]! < 1e-9).map(([id]) => id)
    expect(found.join('')).toBe(critical)
  })

  // Hillier & Lieberman, Introduction to Operations Research, the stagecoach problem (from memory; optimum 11 verified by
  // enumeration, check 3.10). Every route has four runs, so that the shortest is the longest of 7 less each cost:
  // 4 · 7 - 11 = 17. The runs without float are those of the three best routes.
  it('finds the three shortest routes of the stagecoach as longest paths', () => {
    const costs = 'AB2 AC4 AD3 BE7 BF4 BG6 CE3 CF2 CG4 DE4 DF1 DG5 EH1 EI4 FH6 FI3 GH3 GI3 HJ3 IJ4'.split(' ')
    const runs = costs.map((text) => ({ id: text.slice(0, 2), cost: Number(text[2]) }))
    const before = (run: string) => runs.filter(({ id }) => id[1] === run[0]).map(({ id }) => id)
    const plan = schedule(networkOf(stages(runs.map(({ id }) => [id, before(id).join(',')]))), [
      0,
      ...runs.map(({ cost }) => 7 - cost),
    ])
    expect(plan.length).toBe(4 * 7 - 11)
    const best = runs.filter((_, i) => plan.latestStart[i + 1]! === plan.earliestStart[i + 1]!).map(({ id }) => id)
    // A-C-E-H-J, A-D-E-H-J, A-D-F-I-J
    expect(best.sort()).toEqual(['AC', 'AD', 'CE', 'DE', 'DF', 'EH', 'FI', 'HJ', 'IJ'])
  })
})
