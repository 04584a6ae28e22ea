import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { integrate } from '../../../src/model/timing/numerics/integrate.ts'
import { fallenTo, flight, pastDistance } from '../../../src/model/timing/shot/flight.ts'
import { anglesToMeet, leastToMeet, rangeOf, speedToMeet } from '../../../src/model/timing/shot/vacuum.ts'

const near = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value - expected), `${value} against ${expected}`).toBeLessThanOrEqual(tolerance)

const degrees = (angle: number) => (angle * Math.PI) / 180

describe('A throw without drag', () => {
  // Uniform gravity, any text on mechanics; g = 9.81.
  test.each([
    [30, 50, 0, 90.34933514, 4.685287114, 26.91853619],
    [10, 45, 1, 11.11111111, 1.571348403, 3.54841998],
    [8, 60, 0.8, 6.079176601, 1.51979415, 3.24648318],
  ])('with %s m/s at %s° from %s m comes %s m far', (speed, angle, height, range, seconds, apex) => {
    const thrown = rangeOf({ speed, angle: degrees(angle), height, gravity: 9.81 })
    near(thrown.range, range, 1e-8)
    near(thrown.flight, seconds, 1e-9)
    near(thrown.apex, apex, 1e-8)
    // The integrator without drag gives the same.
    const flown = flight({ speed, angle: degrees(angle), drag: 0, gravity: 9.81 }, [fallenTo(-height)])
    near(flown.seconds, seconds, 1e-9)
    near(flown.state[0]!, range, 1e-8)
  })

  test('meets a point at two angles, and not below the least speed', () => {
    const angles = anglesToMeet({ x: 3, y: 1.6, speed: 9, gravity: 9.81 })!
    near((angles.low * 180) / Math.PI, 40.18403887, 1e-8)
    near((angles.high * 180) / Math.PI, 77.88844807, 1e-8)
    const least = leastToMeet({ x: 3, y: 1.6, gravity: 9.81 })
    near(least.speed, 7.003570518, 1e-9)
    expect(anglesToMeet({ x: 3, y: 1.6, speed: least.speed * (1 - 1e-9), gravity: 9.81 })).toBeNull()
    near(speedToMeet({ x: 3, y: 1.6, angle: least.angle, gravity: 9.81 })!, least.speed, 1e-9)
    for (const angle of [angles.low, angles.high]) {
      near(speedToMeet({ x: 3, y: 1.6, angle, gravity: 9.81 })!, 9, 1e-9)
    }
  })
})

describe('A throw with quadratic drag', () => {
  // Set-up of Taylor, Classical Mechanics (2005), example 2.6, and a foam ball; values computed with DOP853, rtol 1e-13.
  test.each([
    [
      'a baseball',
      { speed: 30, angle: degrees(50), drag: 0.008166666666666668, gravity: 9.8 },
      0,
      58.118637,
      4.10566662,
      20.7428258,
      20.971005,
    ],
    [
      'a foam ball',
      { speed: 9, angle: degrees(55), drag: 0.03588012969664902, gravity: 9.81 },
      0.6,
      6.60652554,
      1.49977626,
      3.05017473,
      8.1507505,
    ],
  ])('%s', (_name, thrown, height, range, seconds, apex, impact) => {
    const { state, seconds: flown } = flight(thrown, [fallenTo(-height)])
    const relative = (value: number, expected: number) => near(value / expected, 1, 1e-6)
    relative(state[0]!, range)
    relative(flown, seconds)
    relative(Math.hypot(state[2]!, state[3]!), impact)
    const top = flight(thrown, [(at) => -at[3]!])
    relative(top.state[1]! + height, apex)
    // Without drag it would go much further.
    expect(rangeOf({ ...thrown, height }).range).toBeGreaterThan(range * 1.1)
  })

  // Taylor (2005), section 2.4: terminal speed 33 m/s, g = 9.81; closed forms.
  test('falls and rises as the closed forms say', () => {
    const drag = 9.81 / 33 ** 2
    const fall = flight({ speed: 0, angle: 0, drag, gravity: 9.81 }, [(at) => -at[1]! - 18.56256911])
    near(fall.seconds, 2, 1e-8)
    near(-fall.state[3]!, 17.59417668, 1e-7)
    near((33 ** 2 / 9.81) * Math.log(Math.cosh((9.81 * 2) / 33)), 18.56256911, 1e-8)
    const rise = flight({ speed: 20, angle: Math.PI / 2, drag, gravity: 9.81 }, [(at) => -at[3]!])
    near(rise.state[1]!, 17.36432756, 1e-7)
    near(rise.seconds, 1.832875557, 1e-8)
  })

  test('loses just the energy that drag takes', () => {
    fc.assert(
      fc.property(
        fc.record({
          speed: fc.double({ min: 2, max: 40, noNaN: true }),
          angle: fc.double({ min: -0.5, max: 1.4, noNaN: true }),
          drag: fc.double({ min: 0, max: 0.2, noNaN: true }),
        }),
        ({ speed, angle, drag }) => {
          const { state } = integrate({
            rates: (at, rates) => {
              const v = Math.hypot(at[2]!, at[3]!)
              rates[0] = at[2]!
              rates[1] = at[3]!
              rates[2] = -drag * v * at[2]!
              rates[3] = -9.81 - drag * v * at[3]!
              rates[4] = drag * v ** 3
            },
            from: [0, 0, speed * Math.cos(angle), speed * Math.sin(angle), 0],
            until: [pastDistance(2)],
            longest: 5,
            tolerance: 1e-10,
            scale: [0.1, 0.1, 0.1, 0.1, 0.1],
          })
          const energy = (state[2]! ** 2 + state[3]! ** 2) / 2 + 9.81 * state[1]! + state[4]!
          expect(Math.abs(energy / (speed ** 2 / 2) - 1)).toBeLessThan(1e-7)
        },
      ),
      { numRuns: 100 },
    )
  })
})

test('A throw with linear drag has the trajectory of the closed form, which tests the integrator alone', () => {
  // Taylor (2005), equation 2.39; root of the closed form: v = 20, 40°, relaxation time 1.5 s, g = 9.81.
  const [speed, angle, time] = [20, degrees(40), 1.5]
  const { state } = integrate({
    rates: (at, rates) => {
      rates[0] = at[2]!
      rates[1] = at[3]!
      rates[2] = -at[2]! / time
      rates[3] = -9.81 - at[3]! / time
    },
    from: [0, 0, speed * Math.cos(angle), speed * Math.sin(angle)],
    until: [fallenTo(0)],
    longest: 10,
    tolerance: 1e-11,
    scale: [0.1, 0.1, 0.1, 0.1],
  })
  near(state[0]!, 17.43415122, 1e-8)
})
