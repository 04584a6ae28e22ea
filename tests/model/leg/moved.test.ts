import { describe, expect, it } from 'vitest'
import type { Duration, Stage } from '../../../src/model/documents/types.ts'
import type { AnyDuration } from '../../../src/model/duration/index.ts'
import type { LegTimes } from '../../../src/model/leg/builder.ts'
import { LegBuilder, type LegSpec } from '../../../src/model/leg/index.ts'
import type { Pmf } from '../../../src/model/leg/pmf.ts'

/** Coarse enough for no tail to be thinned, which would depend on where its points lie. */
const step = 0.05
const perStep = 2

const range = (low: number, likely: number, high: number): Duration => ({ kind: 'range', low, likely, high })

const stage = (id: string, after: string[], duration: AnyDuration, each = false): Stage => ({
  id,
  name: id,
  duration: duration as Duration,
  after,
  ...(each ? { each } : {}),
})

// The arm waits for nothing, the grip for both, so that the arm and the aim are beside others and the rest is not.
const stages = [
  stage('arm', [], range(0.5, 0.7, 1.1)),
  stage('aim', ['drive'], range(0.4, 0.5, 0.9)),
  stage('grip', ['arm', 'aim'], range(0.3, 0.5, 0.8), true),
  stage('lift', ['grip'], range(0.2, 0.3, 0.6)),
  stage('place', ['lift'], range(0.25, 0.4, 0.7), true),
]
const spec: LegSpec = {
  trip: { stages },
  drive: { seconds: 1.2, pace: range(1, 1.1, 1.5) },
  load: 3,
}
const retried: LegSpec = { ...spec, load: 2, tries: { success: 0.9, retry: range(0.3, 0.5, 0.7) } }

/** The same leg with the move written into its document: added up from its stages. */
const written = (of: LegSpec, id: string, by: number): LegSpec => ({
  ...of,
  trip: {
    stages: stages.map((own) =>
      own.id === id ? stage(id, own.after, { kind: 'shifted', base: own.duration, by }, own.each) : own,
    ),
  },
})

const mean = ({ first, mass }: Pmf) => mass.reduce((sum, m, i) => sum + m * (first + i), 0)

/** The largest difference of two cdfs. */
function apart(a: Pmf, b: Pmf): number {
  let most = 0
  let sum = 0
  for (let k = Math.min(a.first, b.first); k < Math.max(a.first + a.mass.length, b.first + b.mass.length); k++) {
    sum += (a.mass[k - a.first] ?? 0) - (b.mass[k - b.first] ?? 0)
    most = Math.max(most, Math.abs(sum))
  }
  return most
}

const all = ({ end, pieces, between }: LegTimes) => [end, ...(pieces ?? []), ...(between ?? [])]

describe('a leg with a stage moved', () => {
  const moves = [-0.2, 0.3].flatMap((by) => stages.map(({ id }) => ({ id, by })))
  it.each(moves)('is the leg whose document says so: $id by $by s', ({ id, by }) => {
    for (const own of [spec, retried])
      for (const form of [1, 0.87, 1.15]) {
        const builder = new LegBuilder(step, perStep)
        const moved = all(builder.times({ ...own, shift: { stage: id, seconds: by } }))
        const wanted = all(builder.times(written(own, id, by)))
        expect(moved.length).toBe(wanted.length)
        for (const [i, time] of moved.entries())
          expect(apart(time.onGrid(perStep, form), (wanted[i] as typeof time).onGrid(perStep, form))).toBeLessThan(1e-9)
      }
  })

  it('is later by as much where a move is no whole number of points, and twice as much where the stage is done twice', () => {
    const builder = new LegBuilder(step, perStep)
    const as = all(builder.times(retried))
    for (const [id, times] of [
      ['grip', 2],
      ['lift', 1],
      ['place', 2],
    ] as const)
      for (const form of [1, 0.87]) {
        const moved = all(builder.times({ ...retried, shift: { stage: id, seconds: 0.17 } }))
        for (const [i, time] of moved.entries())
          expect(mean(time.onGrid(perStep, form)) - mean((as[i] as typeof time).onGrid(perStep, form))).toBeCloseTo(
            (times * form * 0.17) / (step * perStep),
            8,
          )
      }
  })

  it('is the same object for two stages that move it as a whole, and another where a stage is beside others or done per piece', () => {
    const builder = new LegBuilder(step, perStep)
    const single = { ...spec, load: 1 }
    const by = (id: string, seconds: number, of: LegSpec = single) =>
      builder.times({ ...of, shift: { stage: id, seconds } })
    expect(by('lift', 0.1)).toBe(by('place', 0.1))
    expect(by('lift', 0.1)).not.toBe(by('aim', 0.1))
    expect(by('lift', 0.1, spec)).not.toBe(by('place', 0.1, spec))
  })

  it('stops at 0: draws that would be negative are none', () => {
    const builder = new LegBuilder(step, perStep)
    const as = builder.times(spec).end.fine
    const moved = builder.times({ ...spec, shift: { stage: 'lift', seconds: -0.4 } }).end.fine
    // The stage has a mean of 1/3 s, a beta-PERT of 0.2, 0.3 and 0.6, and never takes longer than 0.6 s.
    expect(mean(as) - mean(moved)).toBeLessThan(0.34 / step)
    expect(mean(as) - mean(moved)).toBeGreaterThan(0.3 / step)
  })
})
