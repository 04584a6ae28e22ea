import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { compressor } from '../../../seed/parts.ts'
import { course } from '../../../src/model/timing/air/match.ts'
import { flowAt, refill } from '../../../src/model/timing/air/refill.ts'
import { integrate } from '../../../src/model/timing/numerics/integrate.ts'
import { flowBetween, flowLaw, freeFlow } from '../../../src/model/timing/pneumatic/flow.ts'
import {
  adiabaticDischarge,
  areasOf,
  chokedBlowDown,
  chokedNozzle,
  freeAirOf,
  nozzleConstant,
  nozzleCriticalRatio,
} from '../../../src/model/timing/pneumatic/gas.ts'

const near = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value - expected), `${value} against ${expected}`).toBeLessThanOrEqual(tolerance)

const bar = 100_000

describe('Air of a cylinder', () => {
  test('agrees with a published example: 2 in bore, 4 in stroke, 30 cycles a minute at 80 psi take 2.81 cubic feet a minute', () => {
    // theautomationstore.com, 'Cylinder air consumption rates', last line of the worked example; the rod is left out there.
    const [inch, psi, ambient] = [0.0254, 6894.757, 14.7 * 6894.757]
    const { full } = areasOf({ bore: 2 * inch, rod: 0 })
    const swept = 2 * full * 4 * inch * 30
    const cubicFeet = freeAirOf(swept, { pressure: ambient + 80 * psi, ambient }) / 0.3048 ** 3
    near(cubicFeet, 2.81, 0.01)
  })

  // Boyle's law; Parr, Hydraulics and Pneumatics (3rd ed. 2011): 40 mm bore, 16 mm rod, 200 mm stroke, 5 bar above the room's 1.01325 bar.
  const { full, ring } = areasOf({ bore: 0.04, rod: 0.016 })
  const ambient = 1.01325 * bar
  const pressure = 5 * bar + ambient

  test('a cycle takes the swept volume times the ratio of pressures', () => {
    const swept = (full + ring) * 0.2
    near(swept * 1000, 0.4624424386, 1e-9)
    near(pressure / ambient, 5.934616334, 1e-9)
    near(freeAirOf(swept, { pressure, ambient }) * 1000, 2.74441845, 1e-8)
    near(20 * freeAirOf(swept, { pressure, ambient }) * 1000, 54.88836899, 1e-8)
  })

  test('the piston pushes with gauge pressure times area', () => {
    near((pressure - ambient) * full, 628.3185307, 1e-7)
    near((pressure - ambient) * ring, 527.7875658, 1e-7)
  })
})

describe('Flow through a path of known conductance', () => {
  // ISO 6358-1:2013; formula as in the front matter of a maker's 'Solenoid valves flow characteristics'.
  test.each([
    [2, 0.3, 7, 6, 293.15, 8.475655414],
    [2, 0.3, 7, 2, 293.15, 14],
    [2, 0.3, 7, 2.1, 293.15, 14],
    [1.2, 0.45, 6.5, 5.5, 300, 5.348603896],
    [2, 0.3, 7, 7, 293.15, 0],
  ])('C %s, b %s, from %s to %s bar at %s K: %s dm³/s', (c, criticalRatio, from, to, temperature, flow) => {
    const path = { conductance: c * 1e-8, criticalRatio }
    near(freeFlow(path, { upstream: from * bar, downstream: to * bar, temperature }) * 1000, flow, 1e-9)
  })

  const paths = fc.record({
    conductance: fc.double({ min: 1e-10, max: 1e-7, noNaN: true }),
    criticalRatio: fc.double({ min: 0.05, max: 0.9, noNaN: true }),
  })

  test('has no jump at the border of choked flow, nor where the drawn-out straight line begins', () => {
    fc.assert(
      fc.property(paths, fc.double({ min: 1.5 * bar, max: 12 * bar, noNaN: true }), (path, from) => {
        const law = flowLaw(path, 293.15)
        const flow = (from: number, to: number) => flowBetween(law, from, to)
        const choked = path.conductance * from
        for (const border of [path.criticalRatio, 0.99]) {
          const [below, above] = [flow(from, from * (border - 1e-9)), flow(from, from * (border + 1e-9))]
          expect(Math.abs(below - above)).toBeLessThan(1e-5 * choked)
        }
        // At the border itself the choked and the other formula meet, slopes too: an ellipse has a level tangent there.
        const past = flow(from, from * (path.criticalRatio + 1e-4 * (1 - path.criticalRatio)))
        expect(Math.abs(past / choked - 1)).toBeLessThan(1e-7)
      }),
    )
  })

  test('never grows with the pressure against it, and turns its sign with the pressures', () => {
    fc.assert(
      fc.property(
        paths,
        fc.array(fc.double({ min: 1 * bar, max: 10 * bar, noNaN: true }), { minLength: 3 }),
        (path, to) => {
          const law = flowLaw(path, 293.15)
          const flow = (from: number, to: number) => flowBetween(law, from, to)
          const rising = [...to].sort((a, b) => a - b).map((pressure) => flow(5 * bar, pressure))
          for (const [i, each] of rising.entries()) if (i > 0) expect(each).toBeLessThanOrEqual(rising[i - 1]! + 1e-15)
          for (const pressure of to) near(flow(5 * bar, pressure), -flow(pressure, 5 * bar), 1e-18)
        },
      ),
    )
  })
})

test('An ideal nozzle is choked at 0.5283 and carries 0.0404 in SI', () => {
  // Shapiro (1953); White, Fluid Mechanics, section 9.4: 3 mm² at 7 bar and 293.15 K.
  near(nozzleCriticalRatio(), 0.5282817877, 1e-9)
  near(nozzleConstant(), 0.04041489959, 1e-9)
  near(chokedNozzle({ area: 3e-6, pressure: 7 * bar, temperature: 293.15 }), 0.004956964967, 1e-9)
})

describe('A tank', () => {
  const supply = { volume: 0.002, compressor: null, leak: 0, ambient: 1.01325 * bar }

  test('loses what each cycle takes, step by step, and lasts for five cycles', () => {
    // Ideal gas, mass balance: 2 L at 8.5 bar, each cycle 0.25 L at 5 bar, so that each takes 0.625 bar.
    const draws = Array.from({ length: 8 }, (_, i) => ({ at: i + 1, volume: 0.00025 }))
    const { draws: done, lost } = course(supply, { stored: 8.5 * bar, working: 5 * bar, until: 10 }, draws)
    expect(lost).toBe(5)
    for (const [i, expected] of [7.875, 7.25, 6.625, 6, 5.375].entries()) near(done[i]!.after / bar, expected, 1e-9)
  })

  test('empties through a choked path in a known time, by closed form and by integration', () => {
    // ISO 6358-2:2013, discharge test: 2 dm³ through 1 dm³/(s·bar), from 9 to 4 bar against the room, at 20 °C.
    near(chokedBlowDown({ volume: 0.002, conductance: 1e-8, from: 9 * bar, to: 4 * bar }), 1.621860432, 1e-9)
    const law = flowLaw({ conductance: 1e-8, criticalRatio: 0.2 }, 293.15)
    const { seconds } = integrate({
      rates: (at, rates) => {
        rates[0] = (-bar * flowBetween(law, at[0]!, 0.5 * bar)) / 0.002
      },
      from: [9 * bar],
      until: [(at) => 4 * bar - at[0]!],
      longest: 10,
      tolerance: 1e-11,
      scale: [bar],
    })
    near(seconds, 1.621860432, 1e-8)
  })

  test('that gets no heat keeps more air and loses more pressure', () => {
    // Çengel & Boles, Thermodynamics, chapter 7: from 8 to 4 bar, 293.15 K.
    const left = adiabaticDischarge({ from: 8 * bar, to: 4 * bar, temperature: 293.15 })
    near(left.temperature, 240.4813096, 1e-7)
    near(left.mass, 0.6095068271, 1e-9)
    near(left.rewarmed / bar, 4.876054617, 1e-9)
  })

  test('its cautious bound is that law in small steps', () => {
    // Many small draws until 4 bar are left take 1 − 0.6095 of the mass: γ times the isothermal drop each, to first order.
    const count = 20_000
    const draws = Array.from({ length: count }, (_, i) => ({ at: i * 1e-4, volume: 1e-7 }))
    const { draws: done } = course(supply, { stored: 8 * bar, working: 8 * bar, until: 10 }, draws)
    // Below the working pressure each draw takes its volume of what the tank has: p falls as (1 − v/V)^γ per draw.
    const k = done.findIndex(({ afterAdiabatic }) => afterAdiabatic <= 4 * bar)
    const taken = 1 - (1 - 1e-7 / 0.002) ** (k + 1)
    expect(Math.abs(1 - taken - 0.6095068271)).toBeLessThan(1e-4)
  })
})

test('A tank between strokes follows compressor and leak: closed pieces against the integrator', () => {
  fc.assert(
    fc.property(
      fc.record({
        stored: fc.double({ min: 2 * bar, max: 9 * bar, noNaN: true }),
        leak: fc.double({ min: 0, max: 4e-4, noNaN: true }),
        flows: fc.tuple(
          fc.double({ min: 3e-4, max: 6e-4, noNaN: true }),
          fc.double({ min: 1e-4, max: 3e-4, noNaN: true }),
          fc.double({ min: 1e-5, max: 1e-4, noNaN: true }),
        ),
        seconds: fc.double({ min: 0.5, max: 60, noNaN: true }),
      }),
      ({ stored, leak, flows, seconds }) => {
        const flow: [number, number][] = [
          [1 * bar, flows[0]],
          [4 * bar, flows[1]],
          [10 * bar, flows[2]],
        ]
        const part = { ...compressor, flow }
        const ambient = 1.01325 * bar
        const supply = { volume: 0.002, leak, ambient, compressor: { part, on: 10 * bar, off: 12 * bar } }
        const { pressure, ran } = refill(supply, { pressure: stored, running: false }, seconds)
        const { state } = integrate({
          rates: (at, rates) => {
            rates[0] = (bar * flowAt(part, at[0]!) - ambient * leak) / 0.002
          },
          from: [stored],
          // Up there the flow ends at once, and down there the room begins.
          until: [(at) => at[0]! - 10 * bar, (at) => ambient - at[0]!],
          longest: seconds,
          tolerance: 1e-10,
          scale: [bar],
        })
        expect(Math.abs(pressure / state[0]! - 1)).toBeLessThan(1e-6)
        near(ran, seconds, 1e-9)
      },
    ),
  )
})
