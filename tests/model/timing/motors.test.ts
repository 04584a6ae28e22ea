import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { largeMotor, smallMotor } from '../../../seed/parts.ts'
import { trapezoidSeconds } from '../../../src/model/timing/drive/trapezoid.ts'
import { circuitOf } from '../../../src/model/timing/electric/circuit.ts'
import { type Launch, run } from '../../../src/model/timing/electric/launch.ts'
import { integrate } from '../../../src/model/timing/numerics/integrate.ts'

const free: Launch = {
  mass: 1,
  cap: Number.POSITIVE_INFINITY,
  standstill: 8,
  perSpeed: 2,
  resistance: 0,
  from: 0,
}

const near = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value - expected), `${value} against ${expected}`).toBeLessThanOrEqual(tolerance)

describe('A trapezoid from rest to rest', () => {
  // Biagiotti & Melchiorri, Trajectory Planning for Automatic Machines and Robots (2008), section 3.2; closed form.
  test.each([
    [10, 4, 2, 2, 4.5],
    [3, 4, 2, 2, 2.449489742783178],
    [8, 4, 2, 2, 4],
    [5, 3, 2, 4, 2.7916666666666665],
    [1, 3, 2, 4, 1.224744871391589],
    [0, 4, 2, 2, 0],
  ])(
    'over %s m with top speed %s, acceleration %s and deceleration %s takes %s s',
    (length, topSpeed, acceleration, deceleration, seconds) => {
      near(trapezoidSeconds(length, { topSpeed, acceleration, deceleration }), seconds, 1e-10)
    },
  )
})

describe('A motor with an inertia', () => {
  // Hughes & Drury, Electric Motors and Drives (5th ed. 2019), chapter 3: free speed 600 rad/s, stall torque 2.4 N·m, inertia 0.004 kg·m².
  const spin = (resistance: number) => run({ ...free, mass: 0.004, standstill: 2.4, perSpeed: 2.4 / 600, resistance })
  const times = [
    [0.5, Math.LN2],
    [0.9, Math.LN10],
    [0.95, 2.995732274],
    [0.99, 4.605170186],
  ] as const

  test.each(times)('is at %s of its free speed after %s s', (fraction, seconds) => {
    near(spin(0).timeConstant, 1, 1e-12)
    near(spin(0).toSpeed(fraction * 600), seconds, 1e-9)
  })

  test.each(times)('and at %s of its speed under load after as long, %s s', (fraction, seconds) => {
    near(spin(0.6).top, 450, 1e-9)
    near(spin(0.6).toSpeed(fraction * 450), seconds, 1e-9)
  })

  test('takes 1.0986 s to half its free speed under load', () => near(spin(0.6).toSpeed(300), 1.098612289, 1e-9))
})

describe('A sprint', () => {
  const sprint = (v0: number, a0: number, cap = Number.POSITIVE_INFINITY) =>
    run({ ...free, standstill: a0, perSpeed: a0 / v0, cap })

  // Furusawa, Hill & Parkinson, Proc. R. Soc. B 102 (1927), 29–42; closed form by Lambert's W.
  test.each([
    [5, 4, 8, 1.734423536, 3.875388],
    [1, 4, 8, 0.5991452187, 2.793162],
    [10, 4.5, 6, 2.957688249, 4.412796],
  ])('of %s m with v0 %s and a0 %s takes %s s and ends with %s m/s', (distance, v0, a0, seconds, speed) => {
    const motion = sprint(v0, a0)
    near(motion.toDistance(distance), seconds, 1e-9)
    near(motion.speedAt(seconds), speed, 1e-6)
  })

  // Keller, Physics Today 26(9) (1973), 43–47: constants F = 12.2 m/s², τ = 0.892 s. Printed times from memory; the
  // constants are rounded, so that 0.02 s are allowed.
  test.each([
    [50, 5.48467, 5.48],
    [60, 6.40481, 6.4],
    [100, 10.0811, 10.07],
  ])('of %s m agrees with a published table', (distance, computed, published) => {
    const seconds = sprint(12.2 * 0.892, 12.2).toDistance(distance)
    near(seconds, computed, 5e-5)
    near(seconds, published, 0.02)
  })

  test.each([
    [5, 4, 12, 6, 1.663585715, 0.3333333],
    [0.5, 4, 12, 6, 0.4087448171, 0.3333333],
    [10, 4.5, 15, 9, 2.56215372, 0.2],
  ])(
    'of %s m with v0 %s, a0 %s and a traction cap of %s m/s² takes %s s',
    (distance, v0, a0, cap, seconds, capEnds) => {
      const motion = sprint(v0, a0, cap)
      near(motion.toDistance(distance), seconds, 1e-8)
      near(motion.toSpeed(motion.knee), capEnds, 1e-7)
      // Without the cap it would be quicker: the piecewise answer must not be that one.
      expect(sprint(v0, a0).toDistance(distance)).toBeLessThan(seconds - 1e-3)
    },
  )
})

/** Any launch that moves. */
const launches = fc
  .record({
    timeConstant: fc.double({ min: 0.03, max: 5, noNaN: true }),
    standstill: fc.double({ min: 2, max: 2000, noNaN: true }),
    top: fc.double({ min: 0.2, max: 20, noNaN: true }),
    capShare: fc.double({ min: 0.3, max: 1.5, noNaN: true }),
    resistanceShare: fc.double({ min: 0, max: 0.25, noNaN: true }),
    distance: fc.double({ min: 0.05, max: 30, noNaN: true }),
    deceleration: fc.double({ min: 0.5, max: 20, noNaN: true }),
  })
  .map(({ timeConstant, standstill, top, capShare, resistanceShare, ...rest }) => ({
    launch: {
      mass: (timeConstant * standstill) / top,
      standstill,
      perSpeed: standstill / top,
      cap: standstill * capShare,
      resistance: standstill * resistanceShare,
      from: 0,
    },
    ...rest,
  }))

describe('The closed form of a launch', () => {
  test('agrees with the integrator to 1e-6, cap, knee and approach alike', () => {
    fc.assert(
      fc.property(launches, ({ launch, distance }) => {
        const motion = run(launch)
        const integrated = integrate({
          rates: (at, rates) => {
            rates[0] = at[1]!
            rates[1] = (motion.forceAt(at[1]!) - launch.resistance) / launch.mass
          },
          from: [0, 0],
          until: [(at) => at[0]! - distance],
          longest: 1000,
          tolerance: 1e-9,
          scale: [distance * 1e-3, motion.top * 1e-3],
        })
        expect(Math.abs(integrated.seconds / motion.toDistance(distance) - 1)).toBeLessThan(1e-6)
        expect(Math.abs(integrated.state[1]! / motion.speedAt(integrated.seconds) - 1)).toBeLessThan(1e-6)
      }),
      { numRuns: 200 },
    )
  })

  test('keeps energy: the work of the force is kinetic energy and resistance', () => {
    fc.assert(
      fc.property(launches, ({ launch, distance }) => {
        const motion = run(launch)
        const { state } = integrate({
          rates: (at, rates) => {
            const force = motion.forceAt(at[1]!)
            rates[0] = at[1]!
            rates[1] = (force - launch.resistance) / launch.mass
            rates[2] = force * at[1]!
          },
          from: [0, 0, 0],
          until: [(at) => at[0]! - distance],
          longest: 1000,
          tolerance: 1e-9,
          scale: [1e-3, 1e-3, 1e-3],
        })
        const kept = (launch.mass * motion.speedAt(motion.toDistance(distance)) ** 2) / 2 + launch.resistance * distance
        expect(Math.abs(state[2]! / kept - 1)).toBeLessThan(1e-6)
      }),
      { numRuns: 100 },
    )
  })

  test('stands where it should after braking', () => {
    fc.assert(
      fc.property(launches, ({ launch, distance, deceleration }) => {
        const motion = run(launch)
        const seconds = motion.toBrake(distance, deceleration)
        const stood = motion.distanceAt(seconds) + motion.speedAt(seconds) ** 2 / (2 * deceleration)
        expect(Math.abs(stood / distance - 1)).toBeLessThan(1e-9)
      }),
    )
  })
})

describe('A motor and its source', () => {
  const electric = {
    motor: largeMotor,
    motors: 1,
    reduction: 1,
    efficiency: 1,
    currentLimit: null,
    voltage: 12,
    sourceResistance: 0,
    lowestVoltage: null,
  }

  test('give back the numbers of the data sheet at nominal voltage', () => {
    for (const motor of [largeMotor, smallMotor]) {
      const circuit = circuitOf({ ...electric, motor })
      near(circuit.standstill, motor.stallTorque, 1e-12)
      near(circuit.standstill / circuit.perSpeed, motor.freeSpeed, 1e-9)
      near(circuit.currentAt(circuit.standstill), motor.stallCurrent, 1e-9)
      near(circuit.currentAt(0), motor.freeCurrent, 1e-12)
    }
  })

  test('never give more mechanical power than the source puts in', () => {
    fc.assert(
      fc.property(
        fc.record({
          motors: fc.integer({ min: 1, max: 8 }),
          sourceResistance: fc.double({ min: 0, max: 0.05, noNaN: true }),
          currentLimit: fc.option(fc.double({ min: 10, max: 200, noNaN: true }), { nil: null }),
          share: fc.double({ min: 0, max: 1, noNaN: true }),
          reduction: fc.double({ min: 0.5, max: 100, noNaN: true }),
        }),
        ({ share, ...change }) => {
          const circuit = circuitOf({ ...electric, ...change })
          const speed = (share * circuit.standstill) / circuit.perSpeed
          const torque = Math.min(circuit.limit, circuit.standstill - circuit.perSpeed * speed)
          const source = circuit.sourceAt(circuit.currentAt(torque), speed)
          expect(source.current * source.voltage).toBeGreaterThanOrEqual(torque * speed - 1e-9)
          near(source.voltage, 12 - change.sourceResistance * source.current, 1e-9)
        },
      ),
    )
  })

  test('at full voltage the source carries just what the motors carry', () => {
    const circuit = circuitOf({ ...electric, motors: 4, sourceResistance: 0.02 })
    // At a standstill: 12 V over 0.1 Ω and four times 0.02 Ω in each loop are 66.7 A a motor, 266.7 A together.
    const current = circuit.currentAt(circuit.standstill)
    near(current, 12 / 0.18, 1e-9)
    near(circuit.sourceAt(current, 0).current, 4 * current, 1e-6)
  })
})
