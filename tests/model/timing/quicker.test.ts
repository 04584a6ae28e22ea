import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { alongCurve } from '../../../src/model/timing/answer/curve.ts'
import { timing } from '../../../src/model/timing/index.ts'
import { integrate } from '../../../src/model/timing/numerics/integrate.ts'
import { Step } from '../../../src/model/timing/numerics/step.ts'
import { pressureAtRest } from '../../../src/model/timing/pneumatic/atRest.ts'
import { flowBetween, flowLaw } from '../../../src/model/timing/pneumatic/flow.ts'
import { cylinderPivotInput, motorPivotInput } from './inputs.ts'

/** What makes the calculators quick, held against the slow way. */

const bar = 100_000

test('A chamber at rest follows its closed form: against the integrator, filled and emptied, for every kind of path', () => {
  fc.assert(
    fc.property(
      fc.record({
        criticalRatio: fc.oneof(
          fc.double({ min: 0.05, max: 0.99, noNaN: true }),
          fc.constantFrom(0.5, 0.5 + 1e-9, 0.51),
        ),
        from: fc.double({ min: 0.3 * bar, max: 9 * bar, noNaN: true }),
        towards: fc.double({ min: 1 * bar, max: 7 * bar, noNaN: true }),
        seconds: fc.double({ min: 0.001, max: 0.5, noNaN: true }),
      }),
      ({ criticalRatio, from, towards, seconds }) => {
        const path = { conductance: 1e-8, criticalRatio }
        const law = flowLaw(path, 293.15)
        // At the reference temperature a volume of 0.1 L takes 1 bar · C / V = 10 times its own pressure a second.
        const { state } = integrate({
          rates: (at, rates) => {
            rates[0] = (bar * flowBetween(law, towards, at[0]!)) / 0.0001
          },
          from: [from],
          until: [],
          longest: seconds,
          // The difference is the integrator's: it falls with this number, to 1e-11 here.
          tolerance: 1e-13,
          scale: [bar],
        })
        const closed = pressureAtRest({ from, towards, pace: 10, path })(seconds)
        expect(Math.abs(closed / state[0]! - 1)).toBeLessThan(1e-8)
      },
    ),
    { numRuns: 300 },
  )
})

test("A step's own curve is of fourth order: half the step leaves a thirty-second of its error", () => {
  // A circle, whose place is known at any time.
  const worst = (h: number) => {
    const step = new Step()
    step.use((at, rates) => {
      rates[0] = -at[1]!
      rates[1] = at[0]!
    }, 2)
    const [from, into] = [Float64Array.of(1, 0), new Float64Array(2)]
    step.begin(from)
    step.take(from, h)
    const shares = Array.from({ length: 21 }, (_, i) => i / 20)
    return Math.max(
      ...shares.map((share) => {
        step.within(from, h, share, into)
        return Math.hypot(into[0]! - Math.cos(share * h), into[1]! - Math.sin(share * h))
      }),
    )
  }
  const order = Math.log2(worst(0.4) / worst(0.2))
  expect(order).toBeGreaterThan(4.7)
  expect(order).toBeLessThan(5.5)
  expect(worst(0.2)).toBeLessThan(1e-6)
})

test('The end of a motion is as exact as its steps, whichever of several events comes first', () => {
  // A thrown stone: height v·t − g·t²/2, back on the ground after 2v/g, highest after v/g.
  const stone = (until: ((at: Float64Array) => number)[]) =>
    integrate({
      rates: (at, rates) => {
        rates[0] = at[1]!
        rates[1] = -9.81
      },
      from: [0, 8],
      until,
      longest: 10,
      tolerance: 1e-10,
      scale: [1, 1],
    })
  expect(stone([(at) => -at[0]!]).seconds).toBeCloseTo(16 / 9.81, 12)
  expect(stone([(at) => -at[1]!]).seconds).toBeCloseTo(8 / 9.81, 12)
  const both = stone([(at) => -at[0]! - 1e-9, (at) => at[0]! - 3])
  expect(both.event).toBe(1)
  expect(both.seconds).toBeCloseTo((8 - Math.sqrt(64 - 6 * 9.81)) / 9.81, 12)
  expect(both.state[0]).toBeCloseTo(3, 12)
})

describe('Times along a curve', () => {
  const values = Array.from({ length: 32 }, (_, i) => 1 + (i + 0.5) / 32)

  test('are those of a smooth motion, from a third of the motions', () => {
    let asked = 0
    const times = alongCurve((value) => {
      asked++
      return 1 / value + Math.sqrt(value)
    }, values)
    expect(asked).toBeLessThan(14)
    for (const [i, time] of times!.entries()) expect(time).toBeCloseTo(1 / values[i]! + Math.sqrt(values[i]!), 6)
  })

  test('are not told where the motion has a kink, a jump, or is impossible somewhere', () => {
    expect(alongCurve((value) => Math.max(1.45, value), values)).toBeNull()
    expect(alongCurve((value) => (value > 1.6 ? 2 : 1), values)).toBeNull()
    expect(alongCurve((value) => (value > 1.9 ? null : value), values)).toBeNull()
  })

  test.each([
    ['pivot', cylinderPivotInput, 'cylinderFriction', { kind: 'range', low: 10, likely: 20, high: 40 }],
    ['pivot', cylinderPivotInput, 'inertia', { kind: 'range', low: 0.5, likely: 0.9, high: 1.6 }],
    ['pivot', { ...motorPivotInput, efficiency: 0.7 }, 'mass', { kind: 'lognormal', median: 4, spread: 1.3 }],
  ] as const)('%s: mean, sd and percentiles are those of motions one by one, case %#', (name, input, key, spread) => {
    const settled = { ...input, cylinderFriction: 20, mass: 4, [key]: spread }
    const alone = timing(name, settled as never)
    // A second input that hardly varies keeps the curve from being used; its draws are others, not the first one's.
    const friction = { kind: 'range', low: 0.5 - 1e-9, likely: 0.5, high: 0.5 + 1e-9 } as const
    const one = timing(name, { ...settled, friction } as never)
    if (!alone.possible || !one.possible || !alone.spread || !one.spread) throw new Error('both are possible')
    const { sd } = one.spread
    for (const told of ['mean', 'sd', 'p10', 'p90'] as const)
      expect(Math.abs(alone.spread[told] - one.spread[told]), told).toBeLessThan(2e-3 * sd)
  })
})
