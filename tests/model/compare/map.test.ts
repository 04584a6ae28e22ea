import { describe, expect, it } from 'vitest'
import { mapMaker } from '../../../src/model/compare/index.ts'
import { mapPoints } from '../../../src/model/compare/map.ts'
import type { Input } from '../../../src/model/compare/types.ts'
import { game, options } from './harbour.ts'

const input = (id: string, path: string, low: number, likely: number, high: number): Input => ({
  id,
  paths: [path],
  as: 'value',
  low,
  likely,
  high,
})

describe('a map over two inputs', () => {
  const inputs = [input('x', '/x', 0, 1, 2), input('other', '/other', 0, 7, 9), input('y', '/y', 0, 1, 2)]

  it('moves its two inputs in the order asked for, and leaves the others at their likely values', () => {
    const seen: (readonly number[])[] = []
    let ticks = 0
    const evaluate = (values: readonly number[]) => {
      seen.push(values)
      return [values[0]!, values[2]!]
    }
    const found = mapPoints(
      { inputs, evaluate },
      {
        axes: { x: 'y', y: 'x' },
        at: [
          [0.5, 2],
          [1, 0],
        ],
      },
      () => void ticks++,
    )
    expect(seen).toEqual([
      [2, 7, 0.5],
      [0, 7, 1],
    ])
    expect(found).toEqual([
      [2, 0.5],
      [0, 1],
    ])
    expect(ticks).toBe(2)
  })

  it('refuses one input twice, and one that is not there', () => {
    const nothing = { inputs, evaluate: () => [] }
    expect(() => mapPoints(nothing, { axes: { x: 'x', y: 'x' }, at: [] }, () => {})).toThrow('two different inputs')
    expect(() => mapPoints(nothing, { axes: { x: 'x', y: 'z' }, at: [] }, () => {})).toThrow("no input 'z'")
  })

  it('has the plans’ points: mooring 16 + success · points against 24 without (see harbour.ts)', () => {
    const asked = [
      input('Mooring holds', '/options/1/robot/finish/mooring/success', 0, 0.5, 1),
      input('Points of the mooring', '/game/finishes/0/points', 10, 20, 30),
    ]
    const at: [number, number][] = [
      [0.5, 20],
      [0.4, 20],
      [1, 10],
      [0.25, 30],
    ]
    const axes = { x: 'Mooring holds', y: 'Points of the mooring' }
    const found = mapMaker({ game, options, inputs: asked })({ axes, at })
    found.forEach(([leaving, mooring], index) => {
      expect(leaving).toBeCloseTo(24, 9)
      expect(mooring).toBeCloseTo(16 + at[index]![0] * at[index]![1], 9)
    })
  })
})
