import { expect, it } from 'vitest'
import { beliefSize, beliefValues, drawsPerHypercube, hypercubes } from '../../../src/model/compare/hypercubes.ts'
import { inputBelief } from '../../../src/model/compare/inputBelief.ts'
import type { Input } from '../../../src/model/compare/types.ts'
import { pertExpectation } from './quadrature.ts'

const inputs: Input[] = [
  { id: 'a', paths: [], as: 'value', low: 0, likely: 2, high: 7 },
  { id: 'b', paths: [], as: 'add', low: -1, likely: -0.5, high: 3 },
  { id: 'sure', paths: [], as: 'value', low: 4, likely: 4, high: 4 },
]
const all = { seed: 7, from: 0, to: beliefSize }

it('has every one of 250 equally likely slices of every input exactly once in each hypercube', () => {
  const rows = beliefValues(inputs, all)
  for (let cube = 0; cube < hypercubes; cube++) {
    for (const index of [0, 1]) {
      const cdf = inputBelief(inputs[index]!).cdf
      const part = rows.slice(cube * drawsPerHypercube, (cube + 1) * drawsPerHypercube)
      const slices = part.map((row) => Math.floor(cdf(row[index]!) * drawsPerHypercube + 1e-9))
      expect(slices.sort((x, y) => x - y)).toEqual(Array.from({ length: drawsPerHypercube }, (_, i) => i))
    }
  }
  expect(rows.every((row) => row[2] === 4)).toBe(true)
})

it('has the mean and variance of the beta-PERT by quadrature, in the input’s own unit, also a negative one', () => {
  const rows = beliefValues(inputs, all)
  for (const index of [0, 1]) {
    const { low, likely, high } = inputs[index]!
    const mean = pertExpectation({ low, likely, high }, (x) => x)
    const variance = pertExpectation({ low, likely, high }, (x) => (x - mean) ** 2)
    expect(inputBelief(inputs[index]!).mean).toBeCloseTo(mean, 5)
    expect(inputBelief(inputs[index]!).variance).toBeCloseTo(variance, 5)
    const drawn = rows.reduce((sum, row) => sum + row[index]!, 0) / beliefSize
    const spread = rows.reduce((sum, row) => sum + (row[index]! - mean) ** 2, 0) / beliefSize
    expect(Math.abs(drawn - mean)).toBeLessThan(1e-3)
    expect(Math.abs(spread - variance)).toBeLessThan(5e-3)
  }
})

it('leaves inputs independent: no correlation beyond that of 2,000 draws', () => {
  const rows = beliefValues(inputs, all)
  const [a, b] = [0, 1].map((index) => {
    const { mean, variance } = inputBelief(inputs[index]!)
    return rows.map((row) => (row[index]! - mean) / Math.sqrt(variance))
  })
  const correlation = a!.reduce((sum, value, i) => sum + value * b![i]!, 0) / beliefSize
  expect(Math.abs(correlation)).toBeLessThan(3 / Math.sqrt(beliefSize))
})

it('gives the same draws for a seed however they are cut, and others for another seed', () => {
  const rows = beliefValues(inputs, all)
  const cut = [0, 1, 249, 250, 777, 1500, beliefSize]
  const parts = cut.slice(1).flatMap((to, i) => beliefValues(inputs, { seed: 7, from: cut[i]!, to }))
  expect(parts).toEqual(rows)
  const other = beliefValues(inputs, { ...all, seed: 8 })
  expect(other.filter((row, i) => row[0] === rows[i]![0]).length).toBeLessThan(3)
})

it('leaves the draws of the inputs as they were when one more is added at the end', () => {
  const two = beliefValues(inputs.slice(0, 2), all)
  expect(beliefValues(inputs, all).map((row) => row.slice(0, 2))).toEqual(two)
})
