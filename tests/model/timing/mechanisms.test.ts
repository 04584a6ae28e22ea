import { describe, expect, test } from 'vitest'
import { compressor, tank, wideCylinder } from '../../../seed/parts.ts'
import { gravity } from '../../../src/model/timing/gravity.ts'
import { codes, done } from './ask.ts'
import {
  airInput,
  cylinderInput,
  cylinderPivotInput,
  driveInput,
  motorPivotInput,
  rollersInput,
  shotInput,
  wheelInput,
} from './inputs.ts'

describe('A drive', () => {
  const exact = { ...driveInput, efficiency: 0.85, voltage: 12.4, friction: 1 }

  test('is limited at the start by what is least: the tyres, the current limit or the motors', () => {
    const by = (change: object) => done('drive', { ...exact, ...change }).quantities
    expect(by({}).limitedBy).toBe('currentLimit')
    expect(by({ friction: 0.5 })).toMatchObject({ limitedBy: 'traction' })
    // The tyres hold μ·m·g; what is left after rolling moves the robot, whatever its rotors need besides.
    expect(by({ friction: 0.5 }).acceleration).toBeCloseTo(0.5 * gravity - 15 / 55, 9)
    expect(by({ currentLimit: null, friction: 3 }).limitedBy).toBe('motor')
  })

  test('with legs gives the trapezoid of a Robot document, and by how much that misses', () => {
    const legs = [1, 2, 3, 5, 8].map((length) => ({ length, weight: 1 }))
    const { trapezoid, topSpeed, acceleration } = done('drive', { ...exact, legs }).quantities
    expect(trapezoid!.topSpeed).toBeLessThan(topSpeed)
    expect(trapezoid!.acceleration).toBeLessThan(acceleration)
    expect(trapezoid!.rms).toBeLessThan(0.02)
    expect(trapezoid!.worst).toBeGreaterThanOrEqual(trapezoid!.rms)
    // No neighbour fits better.
    const rms = (top: number, launch: number) =>
      Math.sqrt(
        trapezoid!.legs.reduce((sum, { length, seconds }) => {
          const { deceleration } = trapezoid!
          const inverse = 1 / launch + 1 / deceleration
          const fitted =
            length < (top ** 2 * inverse) / 2 ? Math.sqrt(2 * length * inverse) : length / top + (top * inverse) / 2
          return sum + (fitted - seconds) ** 2
        }, 0) / legs.length,
      )
    expect(rms(trapezoid!.topSpeed, trapezoid!.acceleration)).toBeCloseTo(trapezoid!.rms, 12)
    for (const [a, b] of [
      [1.01, 1],
      [0.99, 1],
      [1, 1.01],
      [1, 0.99],
    ] as const) {
      expect(rms(trapezoid!.topSpeed * a, trapezoid!.acceleration * b)).toBeGreaterThan(trapezoid!.rms)
    }
  })

  test('whose motor is itself a trapezoid is fitted without a misfit', () => {
    // A current limit far below stall and a far-off free speed: constant force until the end of every leg.
    const motor = { ...driveInput.motor, freeSpeed: 9000, stallTorque: 30, stallCurrent: 3000 }
    const legs = [1, 2, 3].map((length) => ({ length, weight: 1 }))
    const { trapezoid, acceleration } = done('drive', {
      ...exact,
      motor,
      sourceResistance: 0,
      currentLimit: 40,
      legs,
    }).quantities
    expect(trapezoid!.rms).toBeLessThan(1e-6)
    expect(trapezoid!.acceleration).toBeCloseTo(acceleration, 3)
  })

  test('warns of a source that falls too low, and of slipping wheels', () => {
    expect(codes(done('drive', { ...exact, currentLimit: null, sourceResistance: 0.03 }))).toContain('sourceVoltageLow')
    expect(codes(done('drive', { ...exact, friction: 0.4 }))).toContain('wheelsSlip')
  })

  test('doubts a motor whose numbers would make power out of nothing', () => {
    const motor = { ...driveInput.motor, stallTorque: 3 }
    expect(codes(done('drive', { ...exact, motor }))).toContain('motorDoubtful')
    expect(codes(done('drive', exact))).not.toContain('motorDoubtful')
  })

  test('takes longer to stand at the end than to pass', () => {
    expect(done('drive', { ...exact, stops: false }).seconds).toBeLessThan(done('drive', exact).seconds)
  })
})

describe('Rollers', () => {
  test('of 4 inches behind 10:1 of a motor at 13,000 turns a minute run with 6.92 m/s: plain arithmetic', () => {
    const motor = { ...rollersInput.motor, freeSpeed: (13_000 * 2 * Math.PI) / 60 }
    const input = {
      ...rollersInput,
      motor,
      reduction: 10,
      rollerDiameter: 4 * 0.0254,
      sourceResistance: 0,
      voltage: 12,
    }
    // 1,300 turns a minute times π · 0.1016 m are 6.916 m/s.
    expect(done('rollers', input).quantities.surfaceSpeed).toBeCloseTo(6.916, 3)
  })

  test('at twice the drive speed, which is common practice without a source, are not remarked on', () => {
    const surface = done('rollers', rollersInput).quantities.surfaceSpeed
    expect(codes(done('rollers', { ...rollersInput, driveSpeed: surface / 2 }))).toEqual([])
    expect(codes(done('rollers', { ...rollersInput, driveSpeed: surface / 1.2 }))).toEqual(['hardlyQuickerThanDrive'])
    expect(codes(done('rollers', { ...rollersInput, driveSpeed: surface * 1.1 }))).toEqual(['slowerThanDrive'])
    expect(done('rollers', { ...rollersInput, driveSpeed: 0 }).quantities.ratio).toBeNull()
  })

  test('push with their grip until the piece has their speed', () => {
    // Grip 10 N less drag 2 N on 0.3 kg: 26.7 m/s²; 0.1 m take √(2 · 0.1 / 26.7) = 0.0866 s, all of it sliding.
    const short = done('rollers', { ...rollersInput, grip: 10, drag: 2, travel: 0.1 })
    expect(short.seconds).toBeCloseTo(Math.sqrt(0.2 / (8 / 0.3)), 9)
    expect(short.quantities.slidingDistance).toBeCloseTo(0.1, 9)
  })
})

describe('A pivot', () => {
  const exact = { ...motorPivotInput, efficiency: 0.7, mass: 4 }

  test('without gravity, friction and back-EMF is the double integrator: 2·√(angle · inertia / torque)', () => {
    const motor = { ...exact.motor, freeSpeed: 9999, rotorInertia: 0 }
    const told = done('pivot', {
      ...exact,
      motor,
      centre: 0,
      friction: 0,
      from: 0,
      to: 1,
      stops: null,
      currentLimit: 20,
      sourceResistance: 0,
    })
    const torque = told.quantities.startTorque
    expect(told.seconds).toBeCloseTo(2 * Math.sqrt(0.9 / torque), 6)
    expect(told.quantities.brakingFrom).toBeCloseTo(0.5, 5)
    expect(told.quantities.endSpeed).toBe(0)
  })

  test('keeps energy: what the motors put in is what gravity, friction and the movement have', () => {
    const told = done('pivot', { ...exact, end: 'stop', to: 1.2, stops: { low: -0.7, high: 1.2 } })
    const { angle, current, time } = told.curves
    expect(time).toHaveLength(61)
    // Torque of the drawn current: per ampere beyond the free current, through 80:1 at 0.7.
    const perAmpere = (2.3 / 118) * 80 * 0.7
    let work = 0
    for (let i = 1; i < angle.length; i++) {
      const torque = perAmpere * ((current[i]! + current[i - 1]!) / 2 - 2)
      work += torque * (angle[i]! - angle[i - 1]!)
    }
    const lifted = 4 * gravity * 0.4 * (Math.sin(1.2) - Math.sin(-0.6))
    const kept = lifted + 0.5 * 1.8 + told.quantities.endEnergy
    expect(Math.abs(work / kept - 1)).toBeLessThan(2e-3)
    expect(codes(told)).toContain('hitsStop')
  })

  test('comes down quicker than it goes up, and stays within the curves', () => {
    const up = done('pivot', exact)
    const down = done('pivot', { ...exact, from: 1.1, to: -0.6 })
    expect(down.seconds).not.toBeCloseTo(up.seconds, 3)
    expect(down.curves.angle[0]).toBeCloseTo(1.1, 9)
    expect(down.curves.angle.at(-1)).toBeCloseTo(-0.6, 6)
    expect(Math.max(...down.curves.speed)).toBeLessThanOrEqual(1e-9)
  })

  test('holds the end angle with gravity’s torque, in amperes', () => {
    const told = done('pivot', exact)
    const torque = 4 * gravity * 0.4 * Math.cos(1.1) - 0.5
    expect(told.quantities.holdingCurrent).toBeCloseTo(torque / ((2.3 / 118) * 80 * 0.7), 9)
  })

  test('by a cylinder uses the stroke of its triangle and arrives at its stop', () => {
    const told = done('pivot', cylinderPivotInput)
    const length = (angle: number) => {
      const [tip, base] = [
        [0.12 * Math.cos(angle), 0.12 * Math.sin(angle)],
        [0.1, -0.35],
      ]
      return Math.hypot(tip[0]! - base[0]!, tip[1]! - base[1]!)
    }
    expect(told.quantities.strokeUsed).toBeCloseTo(length(1.1) - length(-0.6), 9)
    expect(told.curves.angle.at(-1)).toBeCloseTo(1.1, 6)
    expect(told.seconds).toBeGreaterThan(told.quantities.strokeUsed! / 1.5)
  })
})

describe('A wheel', () => {
  const exact = { ...wheelInput, inertia: 0.0025, drag: 0.05 }

  test('spins up by constant torque to the knee and by the exponential from there', () => {
    const { seconds, quantities } = done('wheel', exact)
    const { kneeSpeed, freeSpeed, timeConstant } = quantities
    expect(kneeSpeed).toBeGreaterThan(0)
    const inertia = 0.0025 + 0.00004
    const capped = ((2.3 / 118) * 0.85 * (40 - 2) - 0.05) / inertia
    const rest = timeConstant * Math.log((freeSpeed - kneeSpeed) / (freeSpeed - 400))
    expect(seconds).toBeCloseTo(kneeSpeed / capped + rest, 9)
  })

  test('loses the energy of a shot and takes as long to come back as the last part of spinning up', () => {
    const { quantities } = done('wheel', exact)
    const taken = (0.25 * 9 ** 2) / 2 / 0.5
    const after = Math.sqrt(400 ** 2 - (2 * taken) / (0.0025 + 0.00004))
    expect(quantities.speedAfterShot).toBeCloseTo(after, 9)
    const recovery = done('wheel', { ...exact, stage: 'recovery' })
    expect(recovery.seconds).toBeCloseTo(quantities.recoverySeconds!, 12)
    const toAfter = done('wheel', { ...exact, target: after, shot: null })
    expect(quantities.spinUpSeconds - toAfter.seconds).toBeCloseTo(recovery.seconds, 9)
  })
})

describe('A shot', () => {
  const exact = { ...shotInput, distance: 3 }

  test('without drag has the exit speed of the closed form, with drag a greater one that meets the middle too', () => {
    const vacuum = done('shot', { ...exact, dragCoefficient: 0 }).quantities
    expect(vacuum.exitSpeed).toBeCloseTo(
      Math.sqrt((gravity * 9) / (2 * Math.cos(0.96) ** 2 * (3 * Math.tan(0.96) - 1.6))),
      9,
    )
    expect(Math.abs(vacuum.miss)).toBeLessThan(1e-6)
    const { quantities, curves } = done('shot', exact)
    expect(quantities.exitSpeed).toBeGreaterThan(vacuum.exitSpeed)
    expect(Math.abs(quantities.miss)).toBeLessThan(1e-6)
    expect(curves.height.at(-1)).toBeCloseTo(2.4, 6)
    expect(curves.distance.at(-1)).toBeCloseTo(3, 6)
    // One wheel against a hood: its surface is twice as quick as the piece.
    expect(quantities.wheelSpeed).toBeCloseTo((2 * quantities.exitSpeed) / 0.075, 9)
  })

  test('leaves less margin the worse its errors, down to hitting the rim', () => {
    const margin = (speedError: number) => done('shot', { ...exact, speedError }).quantities.margin!
    expect(margin(0) > margin(0.02) && margin(0.02) > margin(0.04)).toBe(true)
    expect(codes(done('shot', { ...exact, speedError: 0.08 }))).toContain('hitsRim')
    // Without any error half of the gap beside the piece is left.
    expect(done('shot', { ...exact, speedError: 0, angleError: 0 }).quantities.margin).toBeCloseTo((0.6 - 0.18) / 2, 6)
  })

  test('into a level ring is judged by distance where it falls through', () => {
    const ring = { size: 0.6, lies: 'level' as const }
    const steep = { ...exact, angle: 1.2, opening: ring }
    const told = done('shot', steep)
    expect(Math.abs(told.quantities.miss)).toBeLessThan(1e-5)
    expect(told.quantities.margin).toBeLessThan(0.21)
    expect(codes(done('shot', { ...exact, angle: 0.6, distance: 2.6, opening: ring }))).toContain('fromBelow')
  })
})

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
