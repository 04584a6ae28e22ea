import { describe, expect, test } from 'vitest'
import { compressor, tank, wideCylinder } from '../../../seed/parts.ts'
import { codes, done } from './ask.ts'
import { airInput, cylinderInput } from './inputs.ts'

describe('A cylinder', () => {
  const exact = { ...cylinderInput, cylinderFriction: 20, load: 60 }

  test('that a hard stop shortens takes less time and less air', () => {
    const whole = done('cylinder', exact)
    const half = done('cylinder', { ...exact, stop: 0.1 })
    expect(half.seconds).toBeLessThan(whole.seconds * 0.75)
    expect(half.quantities.travel).toBe(0.1)
    // Swept volume halves; what the dead volume takes stays.
    const dead = (0.00001 * 400_000) / 101_325
    expect(half.quantities.freeAir - dead).toBeCloseTo((whole.quantities.freeAir - dead) / 2, 12)
    // Not the same as a shorter cylinder: the stopped one still has to empty what lies behind its stop.
    const shorter = done('cylinder', { ...exact, cylinder: { ...wideCylinder, stroke: 0.1 } })
    expect(half.seconds).toBeGreaterThan(shorter.seconds)
  })

  test('moves by the choked exhaust’s closed form where that is the bottleneck', () => {
    // Wide supply, narrow exhaust, light load: the piston goes as fast as C·p₀/area lets its exhaust out.
    const supply = { ...exact.supply, conductance: 2e-7 }
    const exhaust = { ...exact.exhaust, conductance: 2e-9 }
    const told = done('cylinder', { ...exact, supply, exhaust, mass: 0.5, deadVolume: 1e-6 })
    // On the air behind it the piston swings, so that the average is what the flow decides.
    const average = told.quantities.travel / (told.seconds - told.quantities.startsAt)
    expect(told.quantities.exhaustChoked).toBe(true)
    expect(Math.abs(average / told.quantities.flowSpeed - 1)).toBeLessThan(0.02)
  })

  test('retracts with the smaller area', () => {
    const out = done('cylinder', exact).quantities
    const back = done('cylinder', { ...exact, direction: 'retract' }).quantities
    expect(back.force / out.force).toBeCloseTo(1 - (0.016 / 0.04) ** 2, 9)
  })

  test('two side by side carry twice the load as one does', () => {
    const two = done('cylinder', { ...exact, cylinders: 2, mass: 12, load: 120 })
    expect(two.seconds).toBeCloseTo(done('cylinder', exact).seconds, 6)
    expect(two.quantities.freeAir).toBeCloseTo(2 * done('cylinder', exact).quantities.freeAir, 12)
  })
})

describe('Stored air', () => {
  const exact = { ...airInput, leak: 0 }

  test('without a compressor lasts for as many cycles as the mass balance says', () => {
    const told = done('air', { ...exact, compressor: null, stored: 900_000 })
    // Each cycle takes working pressure · volume / tanks; as many as fit between stored and working pressure.
    const { pressureDrop, cycles } = told.quantities
    expect(cycles).toBe(Math.floor((900_000 - 501_325) / pressureDrop))
    expect(told.quantities.lostAt).toBe(12 * (cycles + 1))
    expect([told.seconds, told.duration]).toEqual([null, null])
    expect(codes(told)).toContain('airRunsOut')
    const more = done('air', { ...exact, compressor: null, tanks: 6 })
    expect(more.quantities.cycles).toBeGreaterThan(cycles)
  })

  test('is sustained at the rate that the compressor gives back', () => {
    const told = done('air', exact)
    // Flow falls in a straight line from 0.0003 to 0.0001 m³/s between 4 and 10 bar; from the working pressure to one cycle's
    // drop above it that is an exponential: t = V/(p₀·s) · ln(flow at the lower / flow at the upper pressure).
    const slope = (0.0001 - 0.0003) / 600_000
    const flow = (pressure: number) => 0.0003 + slope * (pressure - 400_000)
    const upper = 501_325 + told.quantities.pressureDrop
    const expected = ((3 * tank.volume) / (100_000 * slope)) * Math.log(flow(upper) / flow(501_325))
    expect(told.seconds).toBeCloseTo(expected, 9)
    // Just slower than that it lasts for ever; a tenth quicker it does not.
    const at = (factor: number) =>
      done('air', {
        ...exact,
        compressor: { part: compressor, on: 900_000, off: 1_000_000 },
        cycleSeconds: told.seconds! * factor,
        matchSeconds: 1200,
      }).quantities.lostAt
    expect(at(1.01)).toBeNull()
    expect(at(0.9)).not.toBeNull()
  })

  test('keeps its mass: what is left is what was stored, plus what came in, less what went out', () => {
    const told = done('air', {
      ...exact,
      compressor: {
        part: {
          ...compressor,
          flow: [
            [100_000, 0.0002],
            [1_000_000, 0.0002],
          ],
        },
        on: 900_000,
        off: 1_000_000,
      },
    })
    const { endPressure, freeAir, cyclesInMatch, compressorDuty, lostAt } = told.quantities
    expect(lostAt).toBeNull()
    const volume = 3 * tank.volume
    const came = 100_000 * 0.0002 * compressorDuty! * 150
    expect(endPressure * volume).toBeCloseTo(900_000 * volume + came - 101_325 * freeAir * cyclesInMatch, 6)
  })

  test('a hard stop that shortens a stroke saves air', () => {
    const stopped = [{ ...exact.strokes[0]!, stop: 0.1 }]
    const whole = done('air', { ...exact, compressor: null }).quantities
    const half = done('air', { ...exact, compressor: null, strokes: stopped }).quantities
    expect(half.freeAir).toBeLessThan(whole.freeAir * 0.55)
    expect(half.cycles).toBeGreaterThan(whole.cycles)
  })

  test('of a cycle without strokes takes no time at all', () => {
    const idle = [{ ...exact.strokes[0]!, out: 0, back: 0 }]
    expect(done('air', { ...airInput, strokes: idle }).duration).toEqual({ kind: 'fixed', seconds: 0 })
  })

  test('by the cautious bound never lasts longer', () => {
    const told = done('air', { ...exact, compressor: null, tanks: 6 })
    expect(told.quantities.cyclesAdiabatic).toBeLessThan(told.quantities.cycles)
    for (const [i, pressure] of told.curves.pressure.entries()) {
      expect(told.curves.pressureAdiabatic[i]!).toBeLessThanOrEqual(pressure + 1e-6)
    }
  })
})
