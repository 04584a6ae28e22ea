import { describe, expect, it } from 'vitest'
import {
  belief,
  beliefDraws,
  beliefNeedsFineGrid,
  beliefSize,
  beliefSummary,
  breakEven,
  Cancelled,
  type CompareRequest,
  compare,
  type Input,
} from '../../../src/model/compare/index.ts'
import { ModelError } from '../../../src/model/errors.ts'
import { game, leaving, mooring, options } from './harbour.ts'
import { pertExpectation } from './quadrature.ts'
import { compareRows, documentsOf } from './reference.ts'

const success: Input = {
  id: 'success',
  paths: ['/options/1/robot/finish/mooring/success'],
  as: 'value',
  low: 0.1,
  likely: 0.5,
  high: 0.8,
  perMeasurement: 0.4,
}
const worth: Input = { id: 'worth', paths: ['/game/finishes/0/points'], as: 'factor', low: 0.6, likely: 1, high: 1.2 }

describe('comparing options of the reference case', () => {
  it.each(compareRows.filter(({ beats }) => beats))(
    'finds who beats whom among $options',
    ({ options, beats }) => {
      const found = compare(documentsOf(...options))
      for (const [own, others] of Object.entries(beats!)) {
        for (const [other, chance] of Object.entries(others)) {
          expect(Math.abs(found.beats[own]![other]! - chance)).toBeLessThan(2e-3)
          expect(found.beats[own]![other]! + found.beats[other]![own]!).toBeCloseTo(1, 9)
        }
      }
      expect(found.options.map(({ id }) => id)).toEqual(options)
    },
    60_000,
  )

  it.each(compareRows.filter(({ crossings }) => crossings))(
    'finds every break-even of $input.id between $options',
    ({ options, input, crossings }) => {
      const found = breakEven({ ...documentsOf(...options), inputs: [input!], breakEven: input!.id })!.crossings
      expect(found.map(({ from, to, jump }) => ({ from, to, jump }))).toEqual(
        crossings!.map(({ from, to }) => ({ from, to, jump: false })),
      )
      found.forEach(({ value }, i) => {
        expect(Math.abs(value - crossings![i]!.value)).toBeLessThan(1e-3)
      })
    },
    60_000,
  )
})

describe('comparing two ways to play a game of pencil and paper', () => {
  it('shows both in short, and the chance that one beats the other', () => {
    const { options: shown, beats } = compare({ game, options })
    expect(shown).toEqual([
      { id: 'leaving', mean: expect.closeTo(24, 9), sd: expect.closeTo(0, 6), p10: 24, p50: 24, p90: 24 },
      { id: 'mooring', mean: expect.closeTo(26, 9), sd: expect.closeTo(10, 9), p10: 16, p50: 16, p90: 36 },
    ])
    expect(beats).toEqual({
      leaving: { mooring: expect.closeTo(0.5, 9) },
      mooring: { leaving: expect.closeTo(0.5, 9) },
    })
  })

  it('breaks even where 16 + 20 · success = 24', () => {
    const { breakEven: found, swing } = compare({ game, options, inputs: [success, worth], breakEven: 'success' })
    expect(found).toEqual({
      input: 'success',
      crossings: [{ value: expect.closeTo(0.4, 8), from: 'leaving', to: 'mooring', jump: false }],
    })
    // Mooring leads by 20 · success · worth − 8.
    expect(swing).toEqual([
      { input: 'success', low: 0.1, high: 0.8, difference: [expect.closeTo(-6, 9), expect.closeTo(8, 9)] },
      { input: 'worth', low: 0.6, high: 1.2, difference: [expect.closeTo(-2, 9), expect.closeTo(4, 9)] },
    ])
  })

  it('names the jump where the call leaves too little time for the mooring', () => {
    const call: Input = { id: 'call', paths: ['/options/1/finish/at'], as: 'value', low: 5, likely: 8, high: 9.9 }
    const found = breakEven({ game, options, inputs: [call], breakEven: 'call' })!
    expect(found.crossings).toEqual([{ value: expect.closeTo(8, 7), from: 'leaving', to: 'mooring', jump: true }])
  })
})

describe('belief about two ways to play', () => {
  const request: CompareRequest = { game, options, inputs: [success, worth], belief: { seed: 11 } }
  const shown = belief(request)
  const meanWorth = pertExpectation(worth, (x) => x)
  const lead = (chance: number, factor: number) => 20 * chance * factor - 8
  const gainOf = (given: (x: number) => number, input: Input) =>
    pertExpectation(input, (x) => Math.max(0, given(x))) - Math.max(0, pertExpectation(input, given))

  it('values knowing everything as the double integral does', () => {
    const all = pertExpectation(success, (p) => {
      // The inner expectation is of a function with one kink in the factor; 400 equal slices of it are enough here.
      return innerMean((factor) => Math.max(0, lead(p, factor)))
    })
    const truth =
      all -
      Math.max(
        0,
        lead(
          pertExpectation(success, (x) => x),
          meanWorth,
        ),
      )
    expect(Math.abs(shown.evpi.value - truth)).toBeLessThan(4 * shown.evpi.standardError)
    expect(shown.evpi.standardError).toBeLessThan(0.02)
    expect(Math.min(...Object.values(shown.regret))).toBeCloseTo(shown.evpi.value, 10)
  })

  it('values knowing one input as the integral over the other does', () => {
    const meanSuccess = pertExpectation(success, (x) => x)
    const truth = {
      success: gainOf((p) => lead(p, meanWorth), success),
      worth: gainOf((factor) => lead(meanSuccess, factor), worth),
    }
    for (const id of ['success', 'worth'] as const) {
      const { value, standardError } = shown.evppi[id]!
      expect(Math.abs(value - truth[id])).toBeLessThan(4 * standardError + 0.002)
      expect(value).toBeLessThanOrEqual(shown.evpi.value + 3 * shown.evpi.standardError)
    }
    expect(Object.keys(shown.evsi)).toEqual(['success'])
  })

  it('says how often each is best, and that neither grid nor form changes anything here', () => {
    const chance = pertExpectation(success, (p) => innerMean((factor) => (lead(p, factor) > 0 ? 1 : 0)))
    expect(Math.abs(shown.best['mooring']! - chance)).toBeLessThan(0.02)
    expect(shown.best['mooring']! + shown.best['leaving']!).toBeCloseTo(1, 12)
    expect(shown.gridError).toBeLessThan(1e-9)
    expect(shown.form).toEqual({ leaving: 0, mooring: 0 })
  })

  it('is the same for the same seed, in one go or in parts of several workers, and another for another seed', () => {
    const cuts = [0, 600, 601, beliefSize]
    const parts = cuts.slice(1).map((to, i) => structuredClone(beliefDraws(request, { from: cuts[i]!, to })))
    expect(beliefNeedsFineGrid(parts)).toBe(false)
    expect(beliefSummary(request, parts.reverse())).toEqual(shown)
    expect(belief({ ...request, belief: { seed: 12 } }).evpi.value).not.toBe(shown.evpi.value)
    expect(() => beliefSummary(request, parts.slice(1))).toThrow(RangeError)
  })

  it('shows what form adds to each option, which is not part of the belief', () => {
    const shaky = { ...mooring, robot: { ...mooring.robot, form: { spread: 1.2 } } }
    const { form, best } = belief({ ...request, options: [leaving, shaky] })
    expect(form['leaving']).toBe(0)
    expect(Math.abs(form['mooring']!)).toBeGreaterThan(0.5)
    expect(best).toEqual(shown.best)
  })

  it('is part of the comparison, which reports progress to the end, and stops when asked', () => {
    const steps: [number, number][] = []
    const report = compare(request, { progress: (done, total) => steps.push([done, total]) })
    expect(report.belief).toEqual(shown)
    expect(steps.map(([done]) => done)).toEqual([...steps.map(([done]) => done)].sort((a, b) => a - b))
    expect(steps.at(-1)![0]).toBe(steps.at(-1)![1])
    let asked = 0
    expect(() => compare(request, { cancelled: () => ++asked > 100 })).toThrow(Cancelled)
    expect(asked).toBe(101)
  })

  function innerMean(of: (factor: number) => number): number {
    return pertExpectation(worth, of, 400)
  }
})

describe('a request that can not be answered', () => {
  const refusal = (request: CompareRequest): ModelError => {
    try {
      compare(request)
    } catch (error) {
      if (error instanceof ModelError) return error
      throw error
    }
    throw new Error('nothing was refused')
  }

  it.each<[string, Partial<CompareRequest>, (string | number)[], string]>([
    ['an option twice', { options: [leaving, leaving] }, ['options', 1, 'id'], 'twice'],
    ['an input twice', { inputs: [success, success] }, ['inputs', 1, 'id'], 'twice'],
    ['an unknown break-even', { breakEven: 'tide' }, ['breakEven'], "no input 'tide'"],
    ['low above likely', { inputs: [worth, { ...success, low: 0.6 }] }, ['inputs', 1], 'low ≤ likely ≤ high'],
    ['an endless range', { inputs: [{ ...success, high: Number.POSITIVE_INFINITY }] }, ['inputs', 0], 'low ≤ likely'],
    [
      'a path to nowhere',
      { inputs: [{ ...success, paths: ['/options/2/name'] }] },
      ['inputs', 0, 'paths', 0],
      "no '2'",
    ],
    ['a high end out of bounds', { inputs: [worth, { ...success, high: 1.5 }] }, ['inputs', 1, 'paths', 0], 'at 1.5'],
    [
      'a measurement without spread',
      { inputs: [{ ...success, perMeasurement: -1 }] },
      ['inputs', 0, 'perMeasurement'],
      '-1',
    ],
    [
      'an end that leaves tries without a retry',
      {
        inputs: [
          { ...success, id: 'grip', paths: ['/options/0/robot/collect/quay/success'], low: 0.5, likely: 1, high: 1 },
        ],
      },
      ['inputs', 0],
      'retry',
    ],
  ])('refuses %s, with its path', (_name, change, path, words) => {
    const error = refusal({ game, options, ...change })
    expect(error.code).toBe('invalid')
    expect(error.path).toEqual(path)
    expect(error.message).toContain(words)
  })

  it('compares a single option with nothing: no beats, no crossing, no swing', () => {
    const report = compare({ game, options: [leaving], inputs: [worth], breakEven: 'worth', belief: { seed: 1 } })
    expect(report.beats).toEqual({ leaving: {} })
    expect(report.breakEven!.crossings).toEqual([])
    expect(report.swing).toEqual([])
    expect(report.belief!.best).toEqual({ leaving: 1 })
    expect(report.belief!.evpi).toEqual({ value: 0, standardError: 0 })
  })
})
