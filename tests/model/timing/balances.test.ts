import fc from 'fast-check'
import { expect, test } from 'vitest'
import { settle } from '../../../src/model/timing/answer/settle.ts'
import type { CylinderInput } from '../../../src/model/timing/index.ts'
import { flowBetween, flowLaw, reference } from '../../../src/model/timing/pneumatic/flow.ts'
import { chambers, drawn, fullForce, type Load, stroke } from '../../../src/model/timing/pneumatic/stroke.ts'
import { cylinderInput } from './inputs.ts'

const { likely } = settle<CylinderInput<number>>(cylinderInput)

const strokes = fc.record({
  mass: fc.double({ min: 1, max: 20, noNaN: true }),
  // Of the force at rest: close to all of it a stroke takes minutes, which no even spacing of points shows.
  loadShare: fc.double({ min: -0.1, max: 0.6, noNaN: true }),
  pressure: fc.double({ min: 350_000, max: 900_000, noNaN: true }),
  temperature: fc.double({ min: 270, max: 320, noNaN: true }),
  farSide: fc.constantFrom<'charged' | 'vented'>('charged', 'vented'),
  direction: fc.constantFrom<'extend' | 'retract'>('extend', 'retract'),
  end: fc.double({ min: 0.03, max: 0.2, noNaN: true }),
})

/** Simpson's rule over evenly spaced values. */
function integral(values: readonly number[], seconds: number): number {
  const step = seconds / (values.length - 1)
  return values.reduce((sum, value, i) => {
    const weight = i === 0 || i === values.length - 1 ? 1 : i % 2 === 1 ? 4 : 2
    return sum + (weight * step * value) / 3
  }, 0)
}

test('A stroke keeps the mass of the air in both chambers, and the energy of what it moves', () => {
  fc.assert(
    fc.property(strokes, ({ end, loadShare, ...change }) => {
      const force = fullForce({ ...likely, ...change }, change.direction)
      const input = { ...likely, ...change, load: loadShare * force }
      const load: Load = {
        direction: input.direction,
        end,
        inertia: input.mass,
        at: (travel) => ({ travel, slope: 1, resistance: input.load }),
        before: 0,
      }
      const done = stroke(input, load, 1e-9, true)
      if (!done) throw new Error('every one of these arrives')
      const { volumes, pushed, resisting } = chambers(input, load)
      const points = drawn(done, 2001)
      const { supply, exhaust, pressure, ambient, temperature } = input
      const warmth = (reference.pressure * temperature) / reference.temperature
      const ends = [0, 2000].map((i) => {
        const state = Float64Array.of(points.coordinate[i]!, 0, points.push[i]!, points.back[i]!)
        const [front, behind] = volumes(state)
        return [points.push[i]! * front, points.back[i]! * behind] as const
      })
      const flowIn = points.push.map((at) => warmth * flowBetween(flowLaw(supply, temperature), pressure, at))
      const flowOut = points.back.map((at) => warmth * flowBetween(flowLaw(exhaust, temperature), at, ambient))
      const [came, went] = [integral(flowIn, done.seconds), integral(flowOut, done.seconds)]
      expect(Math.abs(ends[1]![0] - ends[0]![0] - came)).toBeLessThan(1e-3 * Math.abs(came))
      expect(Math.abs(ends[0]![1] - ends[1]![1] - went)).toBeLessThan(1e-3 * Math.max(went, 1))
      const power = points.rate.map(
        (speed, i) =>
          speed *
          (points.push[i]! * pushed -
            points.back[i]! * resisting -
            ambient * (pushed - resisting) -
            input.cylinderFriction),
      )
      const kept = (input.mass * points.rate.at(-1)! ** 2) / 2 + input.load * end
      expect(Math.abs(integral(power, done.seconds) - kept)).toBeLessThan(2e-3 * (Math.abs(kept) + 1))
    }),
    { numRuns: 40 },
  )
})
