import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Mechanism } from '../../../src/model/documents/mechanism.ts'
import { mechanismAnswer } from '../../../src/model/timing/index.ts'
import { linearScale } from '../../../web/charts/scale.ts'
import { limitLabels } from '../../../web/charts/timing/curves/limitLabels.ts'
import { apart, between, farLimits, panelDomain, shownLimits } from '../../../web/charts/timing/curves/panel.ts'
import { panelsOf } from '../../../web/charts/timing/curves/panels.ts'
import { columnsOf } from '../../../web/charts/timing/curves/SmallMultiples.tsx'
import { shownOf } from '../../../web/charts/timing/useShown.ts'
import { driveInput, examples } from '../../model/timing/inputs.ts'

const mechanisms = examples.flatMap(([calculator, input], index) =>
  calculator === 'air' ? [] : [{ id: `m${index}`, name: 'Some', calculator, input } as Mechanism],
)
const panelsFor = (mechanism: Mechanism) => panelsOf(shownOf(mechanism, mechanismAnswer(mechanism)))
const [drive] = mechanisms as [Extract<Mechanism, { calculator: 'drive' }>]
const named = (panels: ReturnType<typeof panelsOf>, id: string) => panels.find((panel) => panel.id === id)!

describe('small pictures of curves', () => {
  test.each(mechanisms)(
    '$calculator $id: every line lies inside of its axis, and so do the limits that are drawn',
    (mechanism) => {
      const panels = panelsFor(mechanism)
      expect(panels.length).toBeGreaterThan(0)
      for (const panel of panels) {
        const [low, high] = panelDomain(panel)
        const values = [...panel.lines.flatMap(({ values }) => values), ...shownLimits(panel).map(({ value }) => value)]
        for (const value of values) {
          expect(value).toBeGreaterThanOrEqual(low - 1e-9)
          expect(value).toBeLessThanOrEqual(high + 1e-9)
        }
        expect(shownLimits(panel).length + farLimits(panel).length).toBe(panel.limits.length)
      }
    },
  )

  test('the source’s lowest voltage on the way is the answer’s own, and 12.4 V while nothing is drawn', () => {
    const answer = mechanismAnswer(drive)
    if (!answer.possible) throw new Error('a drive that should do it')
    const { values } = named(panelsFor(drive), 'voltage').lines[0]!
    const lowest = (answer.quantities as { sourceVoltage: number }).sourceVoltage
    expect(Math.min(...values)).toBeGreaterThanOrEqual(lowest - 1e-9)
    // It is lowest at the knee, between two points of the curve: as near as one step of the curve on its way down.
    const step = values[0]! - values[1]!
    expect(step).toBeGreaterThan(0)
    expect(Math.min(...values)).toBeLessThan(lowest + step)
    expect(values.at(-1)).toBeCloseTo(12.4, 9)
  })

  test('a limit that is near is drawn, one far off is said', () => {
    expect(shownLimits(named(panelsFor(drive), 'current')).map(({ text }) => text)).toEqual(['limit 60\u00a0A'])
    const slow = { ...drive, input: { ...driveInput, distance: 0.02 } }
    expect(shownLimits(named(panelsFor(slow), 'speed'))).toEqual([])
    expect(farLimits(named(panelsFor(slow), 'speed'))).toHaveLength(1)
  })

  test('a current is never shown from above 0, where a small change would look large', () => {
    const wheel = mechanisms.find(({ calculator }) => calculator === 'wheel')!
    expect(panelDomain(named(panelsFor(wheel), 'current'))[0]).toBe(0)
  })

  test('a curve that does not change has an axis nevertheless', () => {
    const flat = (value: number) => panelDomain({ lines: [{ id: 'a', name: 'A', values: [value, value] }], limits: [] })
    expect(flat(0)).toEqual([-1, 1])
    for (const value of [-3, 1e-12, 5]) {
      const [low, high] = flat(value)
      expect(low).toBeLessThanOrEqual(value)
      expect(high).toBeGreaterThanOrEqual(value)
      expect(high).toBeGreaterThan(low)
    }
  })

  test('texts of limits at one end never lie on each other', () => {
    for (const mechanism of mechanisms)
      for (const panel of panelsFor(mechanism)) {
        const x = panel.lines[0]!.values.map((_, i) => i)
        const scale = linearScale([0, x.length - 1], [52, 340])
        const up = linearScale(panelDomain(panel), [126, 22])
        const labels = limitLabels(panel, { x, scale, up, left: 52, right: 340, top: 22, bottom: 122 })
        for (const [i, a] of labels.entries())
          for (const b of labels.slice(i + 1))
            if (a.left === b.left) expect(Math.abs(a.at - b.at)).toBeGreaterThanOrEqual(13)
      }
  })

  test('a limit’s text moves off its line where a curve would go through it there', () => {
    // On a phone: the line is crossed early by one curve and late by the other, so that none of the four near places is free.
    const x = Array.from({ length: 60 }, (_, i) => i)
    const falling = (from: number, to: number) => x.map((i) => from + ((to - from) * i) / 59)
    const lines = [falling(90, 25), falling(90, 35)].map((values, i) => ({ id: `${i}`, name: `${i}`, values }))
    const limit = { id: 'limit', value: 60, text: 'working pressure: 500 kPa' }
    const panel = { id: 'p', name: 'P', unit: 'kPa', factor: 1, lines, limits: [limit], say: String }
    const up = linearScale(panelDomain(panel), [172, 22])
    const scale = linearScale([0, 59], [52, 300])
    const place = (bottom: number) => limitLabels(panel, { x, scale, up, left: 52, right: 300, top: 22, bottom })[0]!
    const near = place(0)
    const label = place(168)
    expect(Math.abs(near.at - near.line)).toBeLessThan(14)
    expect(Math.abs(label.at - label.line)).toBeGreaterThan(14)
    // Nothing of either curve comes within the letters, which begin at the edge and are 6.6 px wide.
    const width = limit.text.length * 6.6
    const [from, to] = label.left ? [52, 52 + width] : [300 - width, 300]
    const under = x.filter((i) => scale(i) >= from && scale(i) <= to)
    for (const { values } of lines)
      for (const i of under) expect(Math.abs(up(values[i]!) - (label.at - 4))).toBeGreaterThan(6)
  })

  test('four pictures stand in two columns where there is room, else in one; none is lost', () => {
    expect(columnsOf(['a', 'b', 'c', 'd'], 1100).map(({ panels }) => panels)).toEqual([
      ['a', 'b'],
      ['c', 'd'],
    ])
    expect(columnsOf(['a', 'b', 'c'], 1100).map(({ panels }) => panels)).toEqual([['a', 'b'], ['c']])
    expect(columnsOf(['a', 'b', 'c', 'd'], 640)).toEqual([{ start: 0, width: 640, panels: ['a', 'b', 'c', 'd'] }])
    const [first, second] = columnsOf(['a', 'b'], 1100)
    if (!first || !second) throw new Error('two columns')
    expect(first.start + first.width).toBeLessThan(second.start)
    expect(second.start + second.width).toBe(1100)
  })

  test('what is moved apart keeps its order and is never nearer than asked', () => {
    expect(apart([10, 12, 50], 13)).toEqual([10, 23, 50])
    expect(apart([12, 10, 50], 13)).toEqual([23, 10, 50])
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { minLength: 2, maxLength: 5 }), (wished) => {
        const sorted = apart(wished, 13).toSorted((a, b) => a - b)
        for (const [i, at] of sorted.slice(1).entries()) expect(at - sorted[i]!).toBeGreaterThanOrEqual(13 - 1e-9)
      }),
    )
  })

  test('a curve is read between its places, rising or falling, and at a jump before it', () => {
    expect(between([0, 2, 4], [1, 3, 7], 3)).toBe(5)
    expect(between([4, 2, 0], [1, 3, 7], 3)).toBe(2)
    expect(between([4, 2, 2, 0], [1, 3, 9, 9], 2)).toBe(3)
    expect([between([0, 2], [1, 3], -1), between([0, 2], [1, 3], 9)]).toEqual([1, 3])
  })
})
