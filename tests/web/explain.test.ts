import { describe, expect, test } from 'vitest'
import { breakwater, optionOf } from '../../seed/index.ts'
import { compare } from '../../src/model/compare/index.ts'
import type { Input } from '../../src/model/compare/types.ts'
import { Planner } from '../../src/model/plan/index.ts'
import type { Explanation } from '../../web/words/explain.ts'
import {
  explainAhead,
  explainKnowing,
  explainMeasuring,
  explainOption,
  explainSwing,
  explainTurn,
} from '../../web/words/explainAnswer.ts'
import { explainCall, explainGain, explainLeaveBy } from '../../web/words/explainMoves.ts'
import { verdict } from '../../web/words/verdict.ts'
import { answer } from '../../web/worker/answer.ts'
import type { Curve } from '../../web/worker/protocol.ts'

const { game } = breakwater
const options = [optionOf('shearwater-best'), optionOf('kittiwake-best')]
const documents = { game, options }
const source = 'A comparison, revision 1.'
const hang: Input = {
  id: 'Hang success',
  paths: ['/options/0/robot/finish/davit/success'],
  as: 'value',
  low: 0.5,
  likely: 0.7,
  high: 0.95,
  perMeasurement: 0.46,
}
const report = compare({ ...documents, inputs: [hang], breakEven: hang.id })
const figure = (text: string) => Number(text.replace('\u2212', '-').replace(/[^\d.-]/g, ''))
const values = ({ parts }: Explanation) => parts.map(({ value }) => figure(value))

/** The panel's table has a row for each label, so that no two may be alike. */
const distinct = ({ parts }: Explanation) => new Set(parts.map(({ label }) => label)).size === parts.length

describe('how a number came about', () => {
  test('the call: three seconds early and late lose what the table says, and no call beats deciding anew', () => {
    const plan = new Planner(game).report(options[0]!, { with: ['call'] })
    const call = plan.call!
    const told = explainCall(options[0]!, call, plan.expected.total, source)
    expect(told.parts.map(({ label }) => label.match(/[\d.]+/)?.[0])).toEqual([
      (call.at + 3).toFixed(1),
      call.at.toFixed(1),
      Math.max(0, call.at - 3).toFixed(1),
      undefined,
    ])
    const [early, called, late, free] = values(told)
    expect(called! - early!).toBeCloseTo(call.early3, 0)
    expect(called).toBeGreaterThanOrEqual(late!)
    expect(free).toBeGreaterThanOrEqual(called! - 0.1)
    expect(distinct(told)).toBe(true)
    const left = explainLeaveBy(game, options[0]!, plan.leaveBy, source)
    expect(values(left)).toEqual(plan.leaveBy.map(({ from }) => Number(from.toFixed(1))))
    expect(distinct(left)).toBe(true)
  })

  test('the break-even: where it turns both options are worth the same, and the better one changes around it', () => {
    const asked = { id: 1, kind: 'curve', ...documents, input: hang, others: [], count: 17 } as const
    const lines = (answer({ ...asked, options: [...options], others: [] }, () => {}) as Curve[]).map(
      ({ option, at }) => ({
        name: option,
        at,
      }),
    )
    const told = explainTurn(report, hang, documents, { lines, source })
    expect(report.breakEven!.crossings).toHaveLength(1)
    expect(told.result).toMatch(/^It turns to ‘.*’ if ‘Hang success’ is (more|less) than \d+\s%\.$/)
    const pairs = told.parts.map(({ value }) => value.split(' : ').map(figure) as [number, number])
    const turn = told.parts.findIndex(({ label }) => label.startsWith('Where it turns'))
    // The lines are those of the coarse grid, rounded to tenths.
    expect(Math.abs(pairs[turn]![0] - pairs[turn]![1])).toBeLessThanOrEqual(0.2)
    const [first, last] = [pairs[0]!, pairs.at(-1)!]
    expect(Math.sign(first[0] - first[1])).toBe(-Math.sign(last[0] - last[1]))
    expect(distinct(told)).toBe(true)
  })

  test('an option: its mean lies between its tenths, as the report has them', () => {
    const summary = report.options[0]!
    const told = explainOption(summary, options, source)
    expect(values(told)).toEqual(
      [summary.mean, summary.sd, summary.p10, summary.p50, summary.p90].map((value) => Number(value.toFixed(1))),
    )
    expect(told.inputs.map(({ label }) => label)).toContain('Top speed')
  })

  test('ahead in a match: the two shares are those of one pair and add up to the whole', () => {
    const told = explainAhead(report, ['shearwater-best', 'kittiwake-best'], options, source)
    const [one, other] = values(told)
    expect(Math.abs(one! + other! - 100)).toBeLessThanOrEqual(1)
  })

  test('the swing: the lead at low and at high of each unknown', () => {
    const [swing] = report.swing!
    const bars = [{ name: hang.id, low: '50 %', high: '95 %', difference: swing!.difference }]
    const told = explainSwing(bars, { lead: 2.1, found: verdict(report)!, options, source })
    expect(told.parts[0]!.value.split(' … ').map(figure)).toEqual(
      swing!.difference.map((value) => Number(value.toFixed(1))),
    )
    expect(told.result).toContain('+2.1')
  })

  test('knowing and measuring: what the belief found for each unknown, the most first, with its error', () => {
    const other = { ...hang, id: 'Another', perMeasurement: undefined }
    const belief = {
      best: {},
      regret: {},
      evpi: { value: 0.42, standardError: 0.02 },
      evppi: { [other.id]: { value: 0.1, standardError: 0.01 }, [hang.id]: { value: 0.31, standardError: 0.02 } },
      evsi: {
        [hang.id]: [
          [4, 0.12],
          [12, 0.25],
        ] as [number, number][],
      },
      gridError: 0,
      form: {},
    }
    const known = explainKnowing(belief, [other, hang], documents, source)
    expect(known.parts.map(({ label, value, note }) => [label, value, note])).toEqual([
      ['Hang success', '0.3', 'standard error 0.02'],
      ['Another', '0.1', 'standard error 0.01'],
    ])
    const measured = explainMeasuring(belief, [hang], documents, { result: 'Measure it.', source })
    expect(measured.parts.map(({ label, value }) => [label, value])).toEqual([
      ['Hang success: 4 times', '0.1'],
      ['Hang success: 12 times', '0.3'],
    ])
    expect(measured.inputs).toEqual([{ label: 'Hang success: spread of one measurement', value: '0.46' }])
  })

  test('an edit: now less saved is the change', () => {
    const told = explainGain({ now: 57.44, saved: 58.5, source })
    expect(told.result).toBe('\u22121.1')
    expect(values(told)).toEqual([57.4, 58.5])
  })
})
