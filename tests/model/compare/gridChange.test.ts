import { describe, expect, it } from 'vitest'
import { drawPart } from '../../../src/model/compare/beliefDraws.ts'
import { needsFineGrid, summaryOf } from '../../../src/model/compare/beliefSummary.ts'
import { gridChange } from '../../../src/model/compare/gridChange.ts'
import { beliefSize, beliefValues } from '../../../src/model/compare/hypercubes.ts'
import { PlanEvaluator } from '../../../src/model/compare/planEvaluator.ts'
import type { Input } from '../../../src/model/compare/types.ts'
import { documentsOf } from './reference.ts'

const inputs: Input[] = [
  { id: 'x', paths: [], as: 'value', low: 0, likely: 1, high: 2 },
  { id: 'y', paths: [], as: 'value', low: -1, likely: 0, high: 3 },
]

/** Two options, and what the coarse grid wrongly adds to the first of them. */
const ask = (wrong: (x: number, y: number) => number) => ({
  options: ['a', 'b'],
  inputs,
  seed: 5,
  evaluate: ([x, y]: readonly number[], step: number) => [x! + y! + (step === 0.25 ? wrong(x!, y!) : 0), 1.4],
})
const drawn = (wrong: (x: number, y: number) => number, step?: 0.1) =>
  drawPart(ask(wrong), { from: 0, to: beliefSize, step }, () => {})
const right = summaryOf(
  ask(() => 0),
  drawn(() => 0),
)

describe('what the coarse grid of a belief changes', () => {
  it('is the rms change of the difference in 50 draws repeated on 0.1 s', () => {
    const part = drawn((x) => 0.03 * Math.sign(x - 1))
    expect(part.repeated.length).toBe(50)
    expect(
      summaryOf(
        ask(() => 0),
        part,
      ).gridError,
    ).toBeCloseTo(0.03, 12)
    expect(needsFineGrid(part)).toBe(false)
  })

  it('is none of the difference where it changes both options alike', () => {
    const common = (values: readonly number[]) => values.map((value) => value + 0.4)
    const { inputs: rows, points, repeated } = drawn(() => 0)
    const moved = gridChange({
      inputs: rows,
      coarse: points,
      fine: repeated.map(({ draw, values }) => ({ draw, values: common(values) })),
    })
    expect(moved.gridError).toBeLessThan(1e-12)
  })

  it('is taken off where it is a straight function of the inputs', () => {
    const part = drawn((x, y) => 0.3 + 0.2 * x - 0.1 * y)
    const summary = summaryOf(
      ask(() => 0),
      part,
    )
    expect(needsFineGrid(part)).toBe(false)
    expect(summary.gridError).toBeLessThan(1e-9)
    expect(summary.evpi.value).toBeCloseTo(right.evpi.value, 9)
    expect(summary.best['a']).toBeCloseTo(right.best['a']!, 9)
  })

  it('calls for all draws on 0.1 s where it is neither small nor straight', () => {
    const rough = (x: number) => 0.4 * Math.sin(40 * x)
    expect(needsFineGrid(drawn(rough))).toBe(true)
    const fine = drawn(rough, 0.1)
    expect(fine.repeated).toEqual([])
    expect(needsFineGrid(fine)).toBe(false)
    expect(summaryOf(ask(rough), fine)).toEqual({ ...right, gridError: 0 })
  })

  it('is below 0.05 points between options of the reference case', () => {
    const documents = documentsOf('cormorant-always', 'gannet-skip')
    const asked: Input[] = [
      { id: 'hang', paths: ['/options/0/robot/finish/davit/success'], as: 'value', low: 0.5, likely: 0.85, high: 1 },
      {
        id: 'drop',
        paths: ['/options/1/robot/score/pier/0/stages/0/duration'],
        as: 'factor',
        low: 0.7,
        likely: 1,
        high: 2,
      },
      { id: 'pace', paths: ['/options/0/robot/drive/topSpeed'], as: 'value', low: 3.6, likely: 4.2, high: 4.5 },
    ]
    const rows = beliefValues(asked, { seed: 1, from: 0, to: beliefSize }).filter((_, draw) => draw % 80 === 0)
    const evaluator = new PlanEvaluator({ ...documents, inputs: asked })
    const [coarse, fine] = ([0.25, 0.1] as const).map((step) =>
      rows.map((row) => evaluator.values(row, { step, form: false })),
    )
    const change = gridChange({
      inputs: rows,
      coarse: coarse!,
      fine: fine!.map((values, draw) => ({ draw, values })),
    })
    expect(change.gridError).toBeLessThan(0.05)
    expect(change.gridError).toBeGreaterThan(0)
  }, 60_000)
})
