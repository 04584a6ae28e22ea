import { expect, test } from 'vitest'
import { sweep, timing } from '../../../src/model/timing/index.ts'
import { driveInput, motorPivotInput, rollersInput, wheelInput } from './inputs.ts'

const reductions = { low: 3, high: 30, count: 100 }

test('The quickest reduction of a pure inertia matches the rotor to the load: √(inertia / rotor inertia)', () => {
  // At constant torque the time goes with √((J + Jᵣ·G²)/G), which is least at G = √(J/Jᵣ); closed form.
  const motor = { ...motorPivotInput.motor, freeSpeed: 9999, rotorInertia: 0.0004 }
  const inertia = 0.9
  const free = { ...motorPivotInput, motor, inertia, centre: 0, friction: 0, currentLimit: 20, sourceResistance: 0 }
  const wide = { low: 5, high: 500, count: 200 }
  const { best, flat, points } = sweep({ calculator: 'pivot', input: free, reductions: wide, motors: [1] })
  const ratio = 100 ** (1 / 199)
  const matched = Math.sqrt(inertia / 0.0004)
  expect(points).toHaveLength(200)
  expect(best!.reduction / matched).toBeGreaterThan(1 / ratio)
  expect(best!.reduction / matched).toBeLessThan(ratio)
  // (J + Jᵣ·G²)/G is 1.02² times its least where G/G* + G*/G = 2 · 1.0404: at 1.327 times the best and 1.327 times below it.
  const far = 1.0404 + Math.sqrt(1.0404 ** 2 - 1)
  expect(Math.abs(Math.log(flat!.high / (matched * far)))).toBeLessThan(2 * Math.log(ratio))
  expect(Math.abs(Math.log((flat!.low * far) / matched))).toBeLessThan(2 * Math.log(ratio))
})

test('Each point is the calculator’s own answer, and the best is the least of those within the limits', () => {
  const { points, best } = sweep({
    calculator: 'drive',
    input: driveInput,
    reductions,
    motors: [2, 4],
    limits: { sourceCurrent: 200 },
  })
  expect(points).toHaveLength(200)
  for (const point of points.filter((_, i) => i % 37 === 0)) {
    const told = timing('drive', { ...driveInput, reduction: point.reduction, motors: point.motors })
    expect(told.possible && told.seconds).toBe(point.seconds)
  }
  const within = points.filter((point) => point.within)
  expect(within.length).toBeGreaterThan(10)
  expect(within.length).toBeLessThan(200)
  for (const { loads } of within) expect(loads!.sourceCurrent).toBeLessThanOrEqual(200)
  expect(best!.seconds).toBe(Math.min(...within.map(({ seconds }) => seconds!)))
})

test('A limit that nothing keeps leaves no best, and what can not move says why', () => {
  const none = sweep({
    calculator: 'drive',
    input: driveInput,
    reductions,
    motors: [4],
    limits: { sourceVoltage: 12.39 },
  })
  expect([none.best, none.flat]).toEqual([null, null])
  const { points, best } = sweep({
    calculator: 'wheel',
    input: wheelInput,
    reductions: { low: 0.5, high: 5, count: 50 },
    motors: [1],
  })
  expect(points.filter(({ seconds }) => seconds === null).map(({ why }) => why!.code)).toContain('neverReachesSpeed')
  expect(best!.seconds).not.toBeNull()
})

test('More motors that do not help are not taken', () => {
  // The piece slips on the rollers long before the motors are at their limit.
  const input = { ...rollersInput, grip: 3, drag: 1, travel: 0.01 }
  const { best } = sweep({ calculator: 'rollers', input, reductions: { low: 4, high: 8, count: 5 }, motors: [3, 2, 1] })
  expect(best!.motors).toBe(1)
})
