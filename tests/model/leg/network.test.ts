import { describe, expect, it } from 'vitest'
import type { Stage } from '../../../src/model/documents/types.ts'
import { distributionOf, massOnGrid } from '../../../src/model/duration/index.ts'
import { LegBuilder, networkOf, schedule } from '../../../src/model/leg/index.ts'
import { convolve, later, meanOf, type Pmf, pmf, varianceOf } from '../../../src/model/leg/pmf.ts'
import { retriesOf } from '../../../src/model/leg/retries.ts'

const stage = (id: string, after: string[], seconds = 1): Stage => ({
  id,
  name: id,
  duration: { kind: 'fixed', seconds },
  after,
})

type Row = [
  id: string,
  after: string,
  mean: number,
  earliestStart: number,
  earliestFinish: number,
  latestStart: number,
  latestFinish: number,
]

// Networks whose activities are all stages; the drive takes no time here.
const published: { source: string; length: number; rows: Row[] }[] = [
  {
    source: 'Taylor, Introduction to Management Science, ch. 8 solutions p. 114, printed table',
    length: 20,
    rows: [
      ['A', '', 7, 0, 7, 2, 9],
      ['B', '', 10, 0, 10, 0, 10],
      ['C', 'A', 6, 7, 13, 9, 15],
      ['D', 'B', 5, 10, 15, 10, 15],
      ['E', 'B', 4, 10, 14, 14, 18],
      ['F', 'C,D', 3, 15, 18, 15, 18],
      ['G', 'E,F', 2, 18, 20, 18, 20],
    ],
  },
  {
    source: 'the same, p. 115, nine nodes with a dummy',
    length: 38,
    rows: [
      ['1-2', '', 8, 0, 8, 1, 9],
      ['1-3', '', 10, 0, 10, 0, 10],
      ['1-4', '', 9, 0, 9, 6, 15],
      ['2-5', '1-2', 6, 8, 14, 9, 15],
      ['2-6', '1-2', 4, 8, 12, 16, 20],
      ['3-5', '1-3', 5, 10, 15, 10, 15],
      ['4-5', '1-4', 0, 9, 9, 15, 15],
      ['4-7', '1-4', 7, 9, 16, 20, 27],
      ['5-7', '2-5,3-5,4-5', 12, 15, 27, 15, 27],
      ['5-8', '2-5,3-5,4-5', 15, 15, 30, 16, 31],
      ['6-9', '2-6', 18, 12, 30, 20, 38],
      ['7-8', '4-7,5-7', 4, 27, 31, 27, 31],
      ['8-9', '5-8,7-8', 7, 31, 38, 31, 38],
    ],
  },
  {
    source: 'Hillier & Lieberman, Reliable Construction, mean durations (from memory, recomputed)',
    length: 44,
    rows: [
      ['A', '', 2, 0, 2, 0, 2],
      ['B', 'A', 4, 2, 6, 2, 6],
      ['C', 'B', 10, 6, 16, 6, 16],
      ['D', 'C', 6, 16, 22, 20, 26],
      ['E', 'C', 4, 16, 20, 16, 20],
      ['F', 'E', 5, 20, 25, 20, 25],
      ['G', 'D', 7, 22, 29, 26, 33],
      ['H', 'E,G', 9, 29, 38, 33, 42],
      ['I', 'C', 7, 16, 23, 18, 25],
      ['J', 'F,I', 8, 25, 33, 25, 33],
      ['K', 'J', 4, 33, 37, 34, 38],
      ['L', 'J', 5, 33, 38, 33, 38],
      ['M', 'H', 2, 38, 40, 42, 44],
      ['N', 'K,L', 6, 38, 44, 38, 44],
    ],
  },
]

describe('critical path', () => {
  it.each(published)('$source', ({ length, rows }) => {
    const network = networkOf(rows.map(([id, after]) => stage(id, after ? after.split(',') : [])))
    const plan = schedule(network, [0, ...rows.map(([, , mean]) => mean)])
    expect(plan.length).toBe(length)
    for (const [i, [id, , , earliestStart, earliestFinish, latestStart, latestFinish]] of rows.entries())
      expect([
        id,
        plan.earliestStart[i + 1],
        plan.earliestFinish[i + 1],
        plan.latestStart[i + 1],
        plan.latestFinish[i + 1],
      ]).toEqual([id, earliestStart, earliestFinish, latestStart, latestFinish])
  })

  it('names the stage of a loop, of an unknown id and of a repeated one', () => {
    expect(() => networkOf([stage('a', ['b']), stage('b', ['a'])])).toThrow(/'[ab]' waits for itself/)
    expect(() => networkOf([stage('a', ['z'])])).toThrow(/'a' waits for 'z'/)
    expect(() => networkOf([stage('a', []), stage('a', [])])).toThrow(/'a' stands twice/)
  })
})

const step = 0.001

function onGrid(density: (x: number) => number, high: number): Pmf {
  const mass = new Float64Array(Math.round(high / step) + 1)
  for (let k = 0; k < mass.length; k++) mass[k] = density(k * step) * step
  return pmf(0, mass)
}

describe('the later of independent times', () => {
  // Clark, Operations Research 9(2):145-162 (1961), eqs. (2)-(4), closed form: E max 11.99337826, Var max 5.066043133.
  // The later of the two means alone would be 11.
  it('of two normals N(10, 2) and N(11, 3)', () => {
    const normal = (mean: number, sd: number) =>
      onGrid((x) => Math.exp(-0.5 * ((x - mean) / sd) ** 2) / (sd * Math.sqrt(2 * Math.PI)), 40)
    const both = later(normal(10, 2), normal(11, 3))
    expect(meanOf(both) * step).toBeCloseTo(11.99337826, 2)
    expect(varianceOf(both) * step ** 2).toBeCloseTo(5.066043133, 1)
  })

  // Feller, vol. 2 (1971) I.6: the last of three exponentials of rate 0.5 has mean 11/3 and variance 49/9.
  it('of three exponentials', () => {
    const one = onGrid((x) => 0.5 * Math.exp(-0.5 * x), 60)
    const all = [one, one, one].reduce(later)
    expect(meanOf(all) * step).toBeCloseTo(11 / 3, 2)
    expect(varianceOf(all) * step ** 2).toBeCloseTo(49 / 9, 1)
  })

  // MacCrimmon & Ryavec, Operations Research 12(1):16-37 (1964) for the effect; values by scipy 1.17.1 integrate.quad on
  // the product of cdfs. The later of the means would be 7.
  it('of three branches given as ranges: the merge bias', () => {
    const ranges = [
      [4, 6, 14],
      [5, 7, 9],
      [3, 7, 11],
    ] as const
    const times = ranges.map(([low, likely, high]) =>
      massOnGrid(distributionOf({ kind: 'range', low, likely, high }), 0.001),
    )
    const all = times.reduce(later)
    expect(meanOf(all) * 0.001).toBeCloseTo(8.2110605, 3)
    expect(varianceOf(all) * 1e-6).toBeCloseTo(1.355534, 3)
  })
})

describe('retries', () => {
  // Wald: the sum of K retries has mean E K · m and variance E K · v + Var K · m², K geometric (Feller, vol. 1, XII.1).
  it('have the moments of a geometric number of retries', () => {
    const one = distributionOf({ kind: 'range', low: 0.8, likely: 1.5, high: 3 })
    const sum = retriesOf(0.8, massOnGrid(one, 0.01))
    const fail = 0.2
    expect(meanOf(sum) * 0.01).toBeCloseTo((fail / 0.8) * one.mean, 4)
    expect(varianceOf(sum) * 1e-4).toBeCloseTo((fail / 0.8) * one.variance + (fail / 0.64) * one.mean ** 2, 2)
  })

  it('stop at twenty: with a success of 0.05 each, Σ k · 0.05 · 0.95^k up to 19, and 20 for the rest', () => {
    let expected = 20 * 0.95 ** 20
    for (let k = 0; k < 20; k++) expected += k * 0.05 * 0.95 ** k
    expect(meanOf(retriesOf(0.05, massOnGrid(distributionOf({ kind: 'fixed', seconds: 2 }), 0.01))) * 0.01).toBeCloseTo(
      2 * expected,
      6,
    )
  })
})

describe('a network', () => {
  const builder = new LegBuilder(0.01)
  const drive = { seconds: 2, pace: { kind: 'range', low: 1, likely: 1.1, high: 1.6 } as const }
  const random = (id: string, after: string[], low: number, likely: number, high: number): Stage => ({
    ...stage(id, after),
    duration: { kind: 'range', low, likely, high },
  })

  // Two ways to the same distribution: with the drive's time known, and by stratified draws with an N in the order.
  it('is the same conditioned on its drive and drawn', () => {
    const stages = [
      random('raise', [], 1.6, 2, 3),
      random('settle', ['drive'], 0.1, 0.3, 0.9),
      random('aim', ['drive', 'raise'], 0.2, 0.4, 1),
      stage('fire', ['settle', 'aim'], 0.3),
    ]
    const exact = builder.times({ trip: { stages }, drive, load: 1 }).end.fine
    // A stage that takes no time makes an N of the order without changing a time.
    const drawn = builder.times({
      trip: { stages: [...stages, stage('glance', ['settle', 'raise'], 0)] },
      drive,
      load: 1,
    }).end.fine
    expect(meanOf(drawn) * 0.01).toBeCloseTo(meanOf(exact) * 0.01, 2)
    expect(Math.sqrt(varianceOf(drawn)) * 0.01).toBeCloseTo(Math.sqrt(varianceOf(exact)) * 0.01, 2)
  })

  it('lets what waits for nothing overlap the drive, and each piece repeat its stage', () => {
    const stages: Stage[] = [stage('lower', [], 1), { ...stage('grab', ['drive', 'lower'], 0.5), each: true }]
    const fixed = { seconds: 2, pace: { kind: 'fixed', seconds: 1 } as const }
    const { end, pieces } = builder.times({ trip: { stages }, drive: fixed, load: 3 })
    expect(meanOf(end.fine) * 0.01).toBeCloseTo(3.5, 9)
    expect(pieces?.map((piece) => meanOf(piece.fine) * 0.01)).toEqual([2.5, 3, 3.5].map((x) => expect.closeTo(x, 9)))
  })

  it('adds independent times: means and variances add up', () => {
    const a = massOnGrid(distributionOf({ kind: 'lognormal', median: 1.3, spread: 2 }), 0.01)
    const b = massOnGrid(distributionOf({ kind: 'range', low: 1.5, likely: 3, high: 13 }), 0.01)
    const sum = convolve(a, b)
    expect(meanOf(sum)).toBeCloseTo(meanOf(a) + meanOf(b), 4)
    expect(varianceOf(sum) / (varianceOf(a) + varianceOf(b))).toBeCloseTo(1, 3)
  })
})

it('stretches the drive by its pace, mean and variance kept', () => {
  const pace = { kind: 'range', low: 1, likely: 1.12, high: 1.6 } as const
  const seconds = 4.543455236
  const [drive] = new LegBuilder(0.01, 10).stageTimes({ trip: { stages: [] }, drive: { seconds, pace }, load: 1 })
  const exact = distributionOf(pace)
  expect(meanOf(drive as Pmf) * 0.01).toBeCloseTo(exact.mean * seconds, 6)
  expect(Math.abs(varianceOf(drive as Pmf) * 0.01 ** 2 - exact.variance * seconds ** 2)).toBeLessThan(0.01 ** 2)
})
