import { describe, expect, it } from 'vitest'
import { beliefSize, beliefValues, hypercubes } from '../../../src/model/compare/hypercubes.ts'
import { chanceOfBest, type Draws, expectedRegret, perfectInformation } from '../../../src/model/compare/information.ts'
import { type Learning, learning, measurements } from '../../../src/model/compare/learning.ts'
import type { Input } from '../../../src/model/compare/types.ts'
import { inLongForm } from '../../browser/longForm.ts'
import { pertExpectation } from './quadrature.ts'

const input = (id: string, low: number, likely: number, high: number, perMeasurement?: number): Input => ({
  id,
  paths: [],
  as: 'value',
  low,
  likely,
  high,
  perMeasurement,
})

function drawn(inputs: readonly Input[], seed: number, points: (...values: number[]) => number[]) {
  const rows = beliefValues(inputs, { seed, from: 0, to: beliefSize })
  const draws: Draws = rows.map((row) => points(...row))
  let learnt: Learning[] | null = null
  const learn = (index: number) => {
    learnt ??= learning(inputs, rows, draws)
    return learnt[index] as Learning
  }
  return { draws, learn }
}

const seeds = Array.from({ length: inLongForm ? 20 : 10 }, (_, i) => i + 1)
/** Enough where each seed is held against the truth for itself, and nothing is averaged over them. */
const some = inLongForm ? seeds : seeds.slice(0, 3)
const rootMeanSquare = (values: readonly number[]) =>
  Math.sqrt(values.reduce((sum, v) => sum + v * v, 0) / values.length)

describe('the value of perfect information', () => {
  it('is E[max(0, θ − c)] − max(0, E θ − c) for a difference of θ − c in one input', () => {
    const theta = input('theta', 0, 2, 7)
    const truth =
      pertExpectation(theta, (x) => Math.max(0, x - 2.8)) -
      Math.max(
        0,
        pertExpectation(theta, (x) => x - 2.8),
      )
    const errors = seeds.map((seed) => {
      const { value, standardError } = perfectInformation(drawn([theta], seed, (x) => [0, x - 2.8]).draws, hypercubes)
      expect(Math.abs(value - truth)).toBeLessThan(6 * standardError + 1e-4)
      return value - truth
    })
    // Stratified in its only input: 2,000 draws are within a thousandth of a point.
    expect(rootMeanSquare(errors)).toBeLessThan(1e-3)
  })

  it('nears the unit normal loss integral for a sum of six inputs, and its standard error is of the right size', () => {
    const inputs = Array.from({ length: 6 }, (_, i) => input(`x${i}`, -1, 0, 1))
    const cost = 0.4
    // Each beta(3, 3) on (−1, 1) has variance 1/7. Loss integral: σ [φ(z) − z (1 − Φ(z))], z = cost / σ = 0.4320.
    const sigma = Math.sqrt(6 / 7)
    const z = cost / sigma
    const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)
    const above = 0.33287
    const normal = sigma * (density - z * above)
    const results = seeds.map((seed) =>
      perfectInformation(
        drawn(inputs, seed, (...x) => [0, x.reduce((sum, value) => sum + value, 0) - cost]).draws,
        hypercubes,
      ),
    )
    const mean = results.reduce((sum, { value }) => sum + value, 0) / seeds.length
    // The sum's excess kurtosis is −1/9: the loss differs from the normal's by about a percent.
    expect(Math.abs(mean / normal - 1)).toBeLessThan(0.02)
    const standardised = results.map(({ value, standardError }) => (value - mean) / standardError)
    expect(rootMeanSquare(standardised)).toBeGreaterThan(0.6)
    expect(rootMeanSquare(standardised)).toBeLessThan(1.6)
  })

  it('is the least expected regret, and the chances of being best add up to 1', () => {
    const { draws } = drawn([input('a', 0, 1, 4), input('b', 0, 2, 3)], 3, (a, b) => [a, b, 1.5])
    const regret = expectedRegret(draws)
    expect(perfectInformation(draws, hypercubes).value).toBeCloseTo(Math.min(...regret), 12)
    expect(chanceOfBest(draws).reduce((sum, p) => sum + p, 0)).toBeCloseTo(1, 12)
  })

  it('shares a draw between options that are equally good', () => {
    expect(
      chanceOfBest([
        [1, 1, 0],
        [0, 2, 1],
      ]),
    ).toEqual([0.25, 0.75, 0])
  })
})

describe('the value of knowing one input', () => {
  const a = input('a', 0, 2, 7, 1.5)
  const b = input('b', -3, 0, 3, 2)
  const idle = input('idle', 0, 1, 9, 1)

  it('is that of the mean given the input when the difference is a sum (a + b − 2.8)', () => {
    const truthA = pertExpectation(a, (x) => Math.max(0, x - 2.8)) - Math.max(0, pertExpectation(a, (x) => x) - 2.8)
    const meanA = pertExpectation(a, (x) => x)
    const truthB = pertExpectation(b, (x) => Math.max(0, meanA + x - 2.8)) - Math.max(0, meanA - 2.8)
    const errors = seeds.map((seed) => {
      const { learn } = drawn([a, b, idle], seed, (x, y) => [0, x + y - 2.8])
      const [knowA, knowB] = [learn(0).evppi, learn(1).evppi]
      expect(Math.abs(knowA.value - truthA)).toBeLessThan(4 * knowA.standardError + 0.001)
      expect(Math.abs(knowB.value - truthB)).toBeLessThan(4 * knowB.standardError + 0.001)
      return [knowA.value - truthA, knowB.value - truthB]
    })
    const bias = [0, 1].map((i) => errors.reduce((sum, e) => sum + (e[i] as number), 0) / seeds.length)
    expect(Math.abs(bias[0] as number)).toBeLessThan(0.01)
    expect(Math.abs(bias[1] as number)).toBeLessThan(0.01)
  })

  it('follows a curve that a straight line would miss: 4 (u − ½)² − 0.3 + b has no slope on average', () => {
    const u = input('u', 0, 0.5, 1)
    const curve = (x: number) => 4 * (x - 0.5) ** 2 - 0.3
    const truth = pertExpectation(u, (x) => Math.max(0, curve(x))) - Math.max(0, pertExpectation(u, curve))
    expect(truth).toBeGreaterThan(0.02)
    for (const seed of some) {
      const { learn } = drawn([u, input('b', -0.5, 0, 0.5)], seed, (x, y) => [curve(x) + y, 0])
      const { value, standardError } = learn(0).evppi
      expect(Math.abs(value - truth)).toBeLessThan(4 * standardError + 0.003)
      expect(value).toBeGreaterThan(truth / 2)
    }
  })

  it('compares more than two options by the best of all curves', () => {
    const meanB = pertExpectation(b, (x) => x) + 3
    const truth =
      pertExpectation(a, (x) => Math.max(2.9, x, meanB)) -
      Math.max(
        2.9,
        pertExpectation(a, (x) => x),
        meanB,
      )
    for (const seed of some) {
      const { learn } = drawn([a, b], seed, (x, y) => [2.9, x, y + 3])
      const { value, standardError } = learn(0).evppi
      expect(Math.abs(value - truth)).toBeLessThan(4 * standardError)
    }
  })

  it('is 0 for an input that plays no part, even where the options are all but equal', () => {
    const shown = some.map((seed) => drawn([a, b, idle], seed, (x, y) => [0, x + y + (x * y) / 2 - 2.5]).learn(2))
    expect(shown.filter(({ evppi }) => evppi.value > 0)).toEqual([])
    expect(shown.flatMap(({ evsi }) => evsi ?? []).every(([, points]) => points === 0)).toBe(true)
  })

  it('is 0 for an input known for certain, and without a second option', () => {
    const known = input('known', 2, 2, 2, 1)
    const { learn } = drawn([a, known], 5, (x, y) => [0, x - y])
    expect(learn(1).evppi).toEqual({ value: 0, standardError: 0 })
    expect(drawn([a], 5, (x) => [x]).learn(0).evppi).toEqual({ value: 0, standardError: 0 })
  })

  it('never exceeds the value of knowing everything', () => {
    for (const seed of some) {
      const { draws, learn } = drawn([a, b], seed, (x, y) => [x * y, 1 + y])
      const all = perfectInformation(draws, hypercubes)
      for (const index of [0, 1])
        expect(learn(index).evppi.value).toBeLessThanOrEqual(all.value + 3 * all.standardError)
    }
  })
})

describe('the value of measuring one input', () => {
  const a = input('a', 0, 2, 7, 1.5)

  it('is the gain from the prior shrunk by √(n / (n + n₀)), for a straight difference', () => {
    const mean = pertExpectation(a, (x) => x)
    const variance = pertExpectation(a, (x) => (x - mean) ** 2)
    const prior = 1.5 ** 2 / variance
    const { learn } = drawn([a], 2, (x) => [2.8, x])
    const shown = learn(0).evsi as [number, number][]
    expect(shown.map(([count]) => count)).toEqual([...measurements])
    for (const [count, points] of shown) {
      const shrink = Math.sqrt(count / (count + prior))
      const truth = pertExpectation(a, (x) => Math.max(2.8, mean + shrink * (x - mean))) - Math.max(2.8, mean)
      expect(Math.abs(points - truth)).toBeLessThan(0.003)
    }
  })

  it('rises with every measurement, from below towards the value of knowing', () => {
    for (const seed of some) {
      const { evppi, evsi } = drawn([a, input('b', -1, 0, 1)], seed, (x, y) => [
        2.8,
        x + y + Math.sin(3 * x) / 2,
      ]).learn(0)
      const points = (evsi as [number, number][]).map(([, value]) => value)
      expect(points).toEqual([...points].sort((x, y) => x - y))
      expect(points.at(-1)).toBeLessThanOrEqual(evppi.value)
      expect(points.at(-1)).toBeGreaterThan(0.9 * evppi.value)
      expect(points[0]).toBeLessThan(evppi.value)
    }
  })

  it('is that of knowing when one measurement is exact, and absent without a measurement to take', () => {
    const exact = drawn([{ ...a, perMeasurement: 0 }], 2, (x) => [2.8, x]).learn(0)
    expect(exact.evsi?.[0]?.[1]).toBeCloseTo(exact.evppi.value, 12)
    expect(drawn([input('a', 0, 2, 7)], 2, (x) => [2.8, x]).learn(0).evsi).toBeNull()
  })
})
