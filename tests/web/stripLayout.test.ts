import { describe, expect, test } from 'vitest'
import { stripLayout } from '../../web/charts/stripLayout.ts'
import { collectLeg, scoreLeg, wholeLeg } from './strip.fixture.ts'

const round = (value: number) => Math.round(value * 1000) / 1000

const bars = (layout: ReturnType<typeof stripLayout>) =>
  Object.fromEntries(
    layout.bars.map((bar) => [
      bar.stage,
      {
        lane: bar.lane,
        start: round(bar.start),
        finish: round(bar.finish),
        floatUntil: round(bar.floatUntil),
        critical: bar.critical,
      },
    ]),
  )

describe('the cycle strip', () => {
  test('stages stand where the schedule puts them, critical ones without float', () => {
    const found = bars(stripLayout([scoreLeg]))
    expect(found['spin']).toEqual({ lane: 1, start: 0, finish: 5, floatUntil: 5, critical: true })
    expect(found['fire']).toEqual({ lane: 0, start: 5, finish: 5.3, floatUntil: 5.3, critical: true })
    expect(found['drive']).toEqual({ lane: 0, start: 0, finish: 4, floatUntil: 4.6, critical: false })
  })

  test('what overlaps the drive lies under it, on a line of its own', () => {
    const found = bars(stripLayout([scoreLeg]))
    expect(found['drive']!.lane).toBe(0)
    expect(found['lift']!.lane).toBeGreaterThan(0)
    expect(found['lift']!.lane).not.toBe(found['spin']!.lane)
    expect(found['lift']).toMatchObject({ start: 0, finish: 1.5, floatUntil: 4.6 })
  })

  test('no two bars of one line overlap, float included', () => {
    const layout = stripLayout([collectLeg, scoreLeg])
    for (const a of layout.bars)
      for (const b of layout.bars)
        if (a !== b && a.leg === b.leg && a.lane === b.lane)
          expect(a.floatUntil <= b.start + 0.051 || b.floatUntil <= a.start + 0.051, `${a.stage} and ${b.stage}`).toBe(
            true,
          )
  })

  test('a cycle is its legs one after the other: 4.2 s, then 5.3 s', () => {
    const layout = stripLayout([collectLeg, scoreLeg])
    expect(layout.sections.map(({ start, finish }) => [round(start), round(finish)])).toEqual([
      [0, 4.2],
      [4.2, 9.5],
    ])
    expect(round(layout.end)).toBe(9.5)
    const spin = layout.bars.find(({ stage }) => stage === 'spin')!
    expect(round(spin.start)).toBe(4.2)
  })

  test('a leg that waits for whichever is late says by how much its average exceeds its bars: 5.6 − 5.3 s', () => {
    expect(round(stripLayout([scoreLeg]).sections[0]!.waiting)).toBe(0.3)
    expect(round(stripLayout([collectLeg]).sections[0]!.waiting)).toBe(0)
  })

  test('a leg given whole is one critical bar of its mean', () => {
    expect(stripLayout([wholeLeg]).bars).toEqual([
      {
        leg: 'finish/davit',
        stage: 'whole',
        name: 'Whole leg',
        lane: 0,
        start: 0,
        finish: 7.5,
        floatUntil: 7.5,
        critical: true,
        mean: 7.5,
        criticality: 1,
        worth: 0.4,
        repeats: 1,
      },
    ])
  })

  test('nothing to show is an empty strip', () => {
    expect(stripLayout([])).toEqual({ bars: [], sections: [], lanes: 1, end: 0 })
  })
})
