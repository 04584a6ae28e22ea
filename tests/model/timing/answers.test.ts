import { describe, expect, test } from 'vitest'
import { driveWheel } from '../../../seed/parts.ts'
import { distributionOf } from '../../../src/model/duration/index.ts'
import { Moments, Uniforms } from '../../../src/model/random/index.ts'
import { drive } from '../../../src/model/timing/drive/drive.ts'
import type { CalculatorName, DriveInput, Inputs, Possible } from '../../../src/model/timing/index.ts'
import { codes, done, why } from './ask.ts'
import {
  airInput,
  cylinderInput,
  cylinderPivotInput,
  driveInput,
  examples,
  motorPivotInput,
  rollersInput,
  shotInput,
  wheelInput,
} from './inputs.ts'

describe('What can not be is said in words:', () => {
  test.each([
    ['drive', { ...driveInput, rollingResistance: 600 }, 'tooWeakToMove', /does not overcome the resistance of 600 N/],
    ['drive', { ...driveInput, friction: 0.05, rollingResistance: 100 }, 'wheelsOnlySpin', /tyres hold 27 N/],
    ['drive', { ...driveInput, reduction: 3000, distance: 200 }, 'tooSlow', /no stage may take more than 600 s/],
    ['rollers', { ...rollersInput, drag: 12, grip: 10 }, 'pieceSlips', /grip it with 10 N and 12 N hold it back/],
    ['rollers', { ...rollersInput, drag: 60, grip: 80 }, 'rollersStall', /60 N hold the piece back/],
    ['pivot', { ...motorPivotInput, reduction: 20 }, 'tooWeakToLift', /gravity and friction/],
    [
      'pivot',
      { ...motorPivotInput, from: 1.5, to: 0, reduction: 20, end: 'brake', stops: null },
      'tooWeakToStop',
      /can not be stopped/,
    ],
    ['pivot', { ...motorPivotInput, from: -1.5, to: 1, reduction: 22, stops: null }, 'stalls', /stalls at 0\.15 rad/],
    ['pivot', { ...motorPivotInput, stops: { low: -1, high: 0.9 } }, 'stopInTheWay', /1\.1 rad lies outside/],
    ['pivot', { ...motorPivotInput, from: -0.8 }, 'startsBeyondStop', /start at -0\.8 rad/],
    ['pivot', { ...motorPivotInput, to: -0.6 }, 'noTurn', /same angle/],
    ['pivot', { ...cylinderPivotInput, closedLength: 0.4 }, 'cylinderDoesNotFit', /hinges are 0\.28\d* m apart/],
    [
      'pivot',
      { ...cylinderPivotInput, from: -1.28, to: -0.2, stops: null, closedLength: 0.244 },
      'tooWeakToTurn',
      /cylinders turn with/,
    ],
    [
      'pivot',
      { ...cylinderPivotInput, from: -1.6, to: -0.9, stops: null, closedLength: 0.244 },
      'deadCentre',
      /points at the pivot/,
    ],
    ['pivot', { ...cylinderPivotInput, pressure: 150_000 }, 'tooWeakToTurn', /gravity and friction need/],
    ['wheel', { ...wheelInput, target: 700 }, 'neverReachesSpeed', /never reaches 700 rad\/s/],
    ['wheel', { ...wheelInput, drag: 5 }, 'tooWeakToTurn', /drag of 5 N·m/],
    ['wheel', { ...wheelInput, stage: 'recovery', inertia: 0.00001 }, 'shotEmptiesWheel', /needs more inertia/],
    ['shot', { ...shotInput, angle: 0.3 }, 'aimsTooLow', /passes below/],
    [
      'shot',
      { ...shotInput, dragCoefficient: 3, pieceDiameter: 2, pieceMass: 0.001 },
      'tooMuchDrag',
      /drag of the air/,
    ],
    ['cylinder', { ...cylinderInput, load: 1000 }, 'tooWeakToPush', /load of 1000 N/],
    ['cylinder', { ...cylinderInput, pressure: 100_000 }, 'noPressure', /nothing pushes/],
    ['air', { ...airInput, stored: 300_000 }, 'storedTooLow', /less than the 501325 Pa/],
    ['air', { ...airInput, stored: 1_200_000 }, 'tankOverPressure', /can burst/],
    ['air', { ...airInput, stored: 510_000, tanks: 1, compressor: null }, 'notOneCycle', /not last for one cycle/],
    ['air', { ...airInput, working: 101_325, ambient: 101_325 }, 'noPressure', /nothing pushes/],
  ] as [CalculatorName, Inputs[CalculatorName], string, RegExp][])('%s, case %#', (name, input, code, words) => {
    const told = why(name, input)
    expect([told.code, told.message]).toEqual([code, expect.stringMatching(words)])
    expect(told.message).not.toMatch(/NaN|Infinity|undefined|\{/)
  })
})

type Range = { kind: 'range'; low: number; likely: number; high: number }

describe('Spread and sensitivity', () => {
  test.each(examples.map(([name, input], index) => ({ name, index, input })))(
    'of $name, example $index: the duration has the mean and spread of its draws',
    ({ name, input }) => {
      const told = done(name, input) as Possible<unknown, unknown, number | null>
      if (told.duration === null || told.spread === null) throw new Error('the example varies')
      const { mean, variance } = distributionOf(told.duration)
      expect(mean).toBeCloseTo(told.spread.mean, 9)
      expect(Math.sqrt(variance)).toBeCloseTo(told.spread.sd, 9)
      expect(told.spread.sd).toBeGreaterThan(0)
      expect(told.sensitivity.length).toBeGreaterThan(2)
    },
  )

  test('a sensitivity is the difference that a small step makes', () => {
    const exact = { ...driveInput, efficiency: 0.85, voltage: 12.4, friction: 1 }
    const told = done('drive', exact)
    for (const name of ['reduction', 'mass', 'distance', 'voltage'] as const) {
      const value = exact[name] as number
      const at = (x: number) => drive.seconds({ ...exact, [name]: x } as Parameters<typeof drive.seconds>[0])!
      const central = (at(value * 1.0005) - at(value * 0.9995)) / (value * 0.001)
      const told1 = told.sensitivity.find(({ input }) => input === name)!
      expect(Math.abs(told1.secondsPerUnit / central - 1), name).toBeLessThan(0.02)
    }
  })

  test('of few stratified draws is that of very many independent ones', () => {
    const { spread } = done('drive', { ...driveInput, efficiency: 0.85 })
    const [voltage, friction] = [driveInput.voltage, driveInput.friction].map((each) => distributionOf(each as Range))
    const uniforms = new Uniforms(11)
    const times = new Moments()
    for (let i = 0; i < 4000; i++) {
      const drawn = { voltage: voltage!.quantile(uniforms.next()), friction: friction!.quantile(uniforms.next()) }
      times.add(drive.seconds({ ...driveInput, efficiency: 0.85, ...drawn } as DriveInput<number>)!)
    }
    const sd = Math.sqrt(times.sampleVariance)
    // The 4,000 have a standard error of 1.1 % of their sd; the 32 are allowed 4 % of it, and a tenth of an sd in the mean.
    expect(Math.abs(spread!.mean - times.mean)).toBeLessThan(0.1 * sd)
    expect(Math.abs(spread!.sd / sd - 1)).toBeLessThan(0.04 + 3 * 0.011)
  })

  test('of a number that is next to nothing is told as of nothing', () => {
    const told = done('pivot', { ...cylinderPivotInput, from: 5e-324 })
    for (const { secondsPerUnit } of told.sensitivity) expect(Number.isFinite(secondsPerUnit)).toBe(true)
  })

  test('of one input alone is the range of the time over its percentiles', () => {
    const wide = { kind: 'range' as const, low: 4, likely: 5, high: 6 }
    const exact = { ...driveInput, efficiency: 0.85, voltage: 12.4, friction: 1, distance: wide }
    const told = done('drive', exact)
    const { swing } = told.sensitivity.find(({ input }) => input === 'distance')!
    expect(told.spread!.p10).toBeCloseTo(swing![0]!, 1)
    expect(told.spread!.p90).toBeCloseTo(swing![1]!, 1)
    // First order: sd of the time is the slope times the sd of the input, 2 · √(1/28) = 0.378 m for this range.
    const slope = told.sensitivity.find(({ input }) => input === 'distance')!.secondsPerUnit
    expect(Math.abs(told.spread!.sd / (slope * Math.sqrt(1 / 7)) - 1)).toBeLessThan(0.05)
  })

  test('of level goes into the belief and leaves the duration fixed', () => {
    const mass = { kind: 'range' as const, low: 45, likely: 55, high: 62, of: 'level' as const }
    const told = done('drive', { ...driveInput, efficiency: 0.85, voltage: 12.4, friction: 1, mass })
    expect(told.duration).toEqual({ kind: 'fixed', seconds: told.seconds })
    expect(told.belief!.low < told.seconds && told.seconds < told.belief!.high).toBe(true)
  })

  test('that reaches into what is impossible says in how many trips', () => {
    const grip = { kind: 'range' as const, low: 1, likely: 4, high: 12 }
    const told = done('rollers', { ...rollersInput, drag: 2, grip })
    expect(told.spread!.impossible).toBeGreaterThan(0)
    expect(codes(told)).toContain('someTripsImpossible')
    expect(told.duration!.kind).not.toBe('fixed')
  })
})

test('The demo’s wheel and motors are of the size that such things have', () => {
  // A solid disk has half of m·r²; a wheel of spokes and rim lies between half and all of it.
  const { mass, diameter, inertia } = driveWheel
  const share = inertia / (mass * (diameter / 2) ** 2)
  expect(share).toBeGreaterThanOrEqual(0.5)
  expect(share).toBeLessThan(1)
})
