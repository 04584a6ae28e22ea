import { describe, expect, it } from 'vitest'
import { brent } from '../../../src/model/compare/brent.ts'
import { crossingsOf } from '../../../src/model/compare/crossings.ts'
import type { Question } from '../../../src/model/compare/evaluator.ts'
import { swingOf } from '../../../src/model/compare/swing.ts'
import type { Input } from '../../../src/model/compare/types.ts'

const input = (id: string, low: number, high: number, likely = (low + high) / 2): Input => ({
  id,
  paths: [],
  as: 'value',
  low,
  likely,
  high,
})

describe('Brent’s zero finder', () => {
  const rootOf = (f: (x: number) => number, low: number, high: number, width = 1e-12) =>
    brent(f, { low, high, valueLow: f(low), valueHigh: f(high) }, width)

  it.each([
    ['x³ − 2x − 5 (Wallis), 2.0945514815423265', (x: number) => x ** 3 - 2 * x - 5, 2, 3, 2.0945514815423265],
    ['cos x − x, the Dottie number', (x: number) => Math.cos(x) - x, 0, 1, 0.7390851332151607],
    ['e⁻ˣ − x, the omega constant', (x: number) => Math.exp(-x) - x, 0, 1, 0.5671432904097838],
    ['x⁹, flat at its root', (x: number) => x ** 9, -1, 4, 0],
  ])('finds the root of %s', (_name, f, low, high, root) => {
    const found = rootOf(f, low, high)
    expect(Math.abs(found.at - root)).toBeLessThan(1e-11)
  })

  it('needs far fewer evaluations than bisection on a smooth function', () => {
    let count = 0
    const counted = (x: number) => {
      count++
      return Math.exp(x) - 3
    }
    rootOf(counted, 0, 4)
    // Bisection from width 4 to 1e-12 takes 42.
    expect(count).toBeLessThan(16)
  })

  it('closes the bracket around a jump, with both sides still apart', () => {
    const found = rootOf((x) => (x < 1 / 3 ? -2 : 5), 0, 1, 1e-9)
    expect(Math.abs(found.at - found.other)).toBeLessThanOrEqual(1e-9)
    expect((found.at - 1 / 3) * (found.other - 1 / 3)).toBeLessThanOrEqual(0)
    expect([found.valueAt, found.valueOther].sort((a, b) => a - b)).toEqual([-2, 5])
  })
})

describe('break-even', () => {
  const x = input('x', 0, 4)
  const ask = (...points: ((value: number) => number)[]): Question => ({
    options: points.map((_, i) => 'abcd'[i] as string),
    inputs: [x],
    evaluate: ([value]) => points.map((f) => f(value as number)),
  })

  it('is the root of the difference: e ˣ against 5 at ln 5', () => {
    const [only, ...others] = crossingsOf(
      ask(Math.exp, () => 5),
      'x',
    )
    expect(others).toEqual([])
    expect(only).toMatchObject({ from: 'b', to: 'a', jump: false })
    expect(only!.value).toBeCloseTo(Math.log(5), 8)
  })

  it('gives both crossings of a parabola and a line, in order', () => {
    const found = crossingsOf(
      ask(
        (v) => (v - 2) ** 2,
        () => 0.5,
      ),
      'x',
    )
    expect(found.map(({ from, to }) => from + to)).toEqual(['ab', 'ba'])
    expect(found[0]!.value).toBeCloseTo(2 - Math.SQRT1_2, 8)
    expect(found[1]!.value).toBeCloseTo(2 + Math.SQRT1_2, 8)
  })

  it('names a jump, at the place where it leaps', () => {
    const [only] = crossingsOf(
      ask(
        (v) => (v < 1.2345678 ? 1 : 3),
        () => 2,
      ),
      'x',
    )
    expect(only).toMatchObject({ from: 'b', to: 'a', jump: true })
    expect(Math.abs(only!.value - 1.2345678)).toBeLessThan(1e-8)
  })

  it('does not call a steep slope a jump', () => {
    const [only] = crossingsOf(
      ask(
        (v) => 2 + Math.tanh((v - 1.7) * 1000),
        () => 2.5,
      ),
      'x',
    )
    expect(only!.jump).toBe(false)
    expect(only!.value).toBeCloseTo(1.7 + Math.atanh(0.5) / 1000, 9)
  })

  it('finds an option that is best only between two points of the scan, between two others', () => {
    // a falls, c rises, b is best from 2.03 to 2.07 alone; the scan looks at 2 and at 2.125.
    const hidden = ask(
      (v) => 2.05 - v,
      () => 0.02,
      (v) => v - 2.05,
    )
    const found = crossingsOf(hidden, 'x')
    expect(found.map(({ from, to }) => from + to)).toEqual(['ab', 'bc'])
    expect(found.map(({ value }) => value)).toEqual([expect.closeTo(2.03, 8), expect.closeTo(2.07, 8)])
  })

  it('is empty where nothing changes, for an input known for certain, and for one option', () => {
    expect(
      crossingsOf(
        ask(
          (v) => v + 1,
          (v) => v,
        ),
        'x',
      ),
    ).toEqual([])
    expect(
      crossingsOf(
        ask(
          () => 1,
          () => 1,
        ),
        'x',
      ),
    ).toEqual([])
    expect(
      crossingsOf(
        ask((v) => v),
        'x',
      ),
    ).toEqual([])
    const known: Question = {
      ...ask(
        (v) => v,
        () => 1,
      ),
      inputs: [input('x', 1, 1)],
    }
    expect(crossingsOf(known, 'x')).toEqual([])
  })

  it('does not change over where two options are merely equal for a while', () => {
    // b equals a until 1.3 and is better after.
    const found = crossingsOf(
      ask(
        () => 1,
        (v) => Math.max(1, v - 0.3),
      ),
      'x',
    )
    expect(found).toEqual([{ value: expect.closeTo(1.3, 7), from: 'a', to: 'b', jump: false }])
    // b is better on both sides and touches a at 1 alone.
    const touching = ask(
      (v) => Math.min(1, v),
      (v) => v / 2 + 0.5,
    )
    expect(crossingsOf(touching, 'x')).toEqual([])
  })

  it('keeps the other inputs at their likely values', () => {
    const question: Question = {
      options: ['a', 'b'],
      inputs: [input('y', 0, 9, 2), x],
      evaluate: ([y, value]) => [y as number, value as number],
    }
    expect(crossingsOf(question, 'x').map(({ value }) => value)).toEqual([expect.closeTo(2, 8)])
  })
})

describe('swing', () => {
  it('goes from low to high one at a time, for the best and runner-up at the likely values, widest first', () => {
    const question: Question = {
      options: ['a', 'b', 'c'],
      inputs: [input('x', 0, 2), input('y', -3, 5, 0), input('z', 0, 1)],
      evaluate: ([x, y, z]) => [10 + x!, 9 - 2 * y!, 100 * z! - 50],
    }
    // Likely: a = 11, b = 9, c = 0. a − b = 1 + x + 2 y.
    expect(swingOf(question)).toEqual([
      { input: 'y', low: -3, high: 5, difference: [-4, 12] },
      { input: 'x', low: 0, high: 2, difference: [1, 3] },
      { input: 'z', low: 0, high: 1, difference: [2, 2] },
    ])
  })

  it('is empty for one option, which has no other to swing against', () => {
    expect(swingOf({ options: ['a'], inputs: [input('x', 0, 1)], evaluate: () => [1] })).toEqual([])
  })
})
