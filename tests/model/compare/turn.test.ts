import { describe, expect, it } from 'vitest'
import type { Question } from '../../../src/model/compare/evaluator.ts'
import { turn } from '../../../src/model/compare/index.ts'
import { turnOf } from '../../../src/model/compare/turn.ts'
import type { Input } from '../../../src/model/compare/types.ts'
import { game, options } from './harbour.ts'

const input = (id: string, low: number, high: number): Input => ({
  id,
  paths: [],
  as: 'value',
  low,
  likely: (low + high) / 2,
  high,
})

const question = (...points: ((x: number) => number)[]): Question & { asked: number } => {
  const counted = {
    options: points.map((_, index) => 'abc'[index]!),
    inputs: [input('x', 0, 4), input('y', 0, 1)],
    asked: 0,
    evaluate: ([x]: readonly number[]) => {
      counted.asked++
      return points.map((f) => f(x!))
    },
  }
  return counted
}

describe('what one input does to the answer over its whole range', () => {
  it('is nothing where one option leads everywhere by more than the coarse grid can move: the fine grid is not asked', () => {
    const asked = question(
      (x) => 10 + (x - 2) ** 2,
      () => 9.5,
    )
    const coarse = asked.evaluate
    const found = turnOf(asked, 'x', coarse)
    expect(found).toEqual({ input: 'x', crossings: [], bestAtLow: 'a', leastLead: 0.5 })
    expect(asked.asked).toBe(17)
  })

  it('is found inside of the range though both ends have the same best: x² − 4x + 3 turns at 1 and at 3', () => {
    const asked = question(
      (x) => x * x - 4 * x + 3,
      () => 0,
    )
    const { crossings, bestAtLow } = turnOf(asked, 'x', asked.evaluate)
    expect(bestAtLow).toBe('a')
    expect(crossings.map(({ from, to }) => from + to)).toEqual(['ab', 'ba'])
    expect(crossings[0]!.value).toBeCloseTo(1, 8)
    expect(crossings[1]!.value).toBeCloseTo(3, 8)
  })

  it('is decided by the fine grid where the coarse one sees a narrow lead', () => {
    const asked = question(
      (x) => 1 + x,
      () => 1.5,
    )
    const { crossings } = turnOf(asked, 'x', ([x]) => [1.6 + x! / 100, 1.5])
    expect(crossings).toHaveLength(1)
    expect(crossings[0]!.value).toBeCloseTo(0.5, 8)
  })

  it('refuses an input that is not there', () => {
    const asked = question(Math.exp)
    expect(() => turnOf(asked, 'z', asked.evaluate)).toThrow("no input 'z'")
  })
})

describe('with plans', () => {
  // Leaving the mooring out earns 24; taking it 16 + 20 · success (see harbour.ts): equal at 0.4.
  const success = (low: number, high: number): Input => ({
    ...input('Mooring holds', low, high),
    paths: ['/options/1/robot/finish/mooring/success'],
  })

  it('the mooring pays above 0.4, and between 0.5 and 0.9 nothing turns', () => {
    const found = turn({ game, options, inputs: [success(0.1, 0.9)], turn: 'Mooring holds' })
    expect(found.crossings).toHaveLength(1)
    expect(found.crossings[0]).toMatchObject({ from: 'leaving', to: 'mooring', jump: false })
    expect(found.crossings[0]!.value).toBeCloseTo(0.4, 6)
    const none = turn({ game, options, inputs: [success(0.5, 0.9)], turn: 'Mooring holds' })
    // 16 + 20 · 0.5 − 24 = 2 at the least.
    expect(none).toMatchObject({ crossings: [], bestAtLow: 'mooring' })
    expect(none.leastLead).toBeCloseTo(2, 9)
  })
})
