import { describe, expect, test } from 'vitest'
import { gravity } from '../../../src/model/timing/gravity.ts'
import { codes, done } from './ask.ts'
import { cylinderPivotInput, driveInput, motorPivotInput, rollersInput, shotInput, wheelInput } from './inputs.ts'

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

  test('never give the piece the share of their speed that slips', () => {
    const told = done('rollers', { ...rollersInput, drag: 0, slip: 0.2, travel: 5 })
    expect(told.quantities.pieceSpeed).toBeCloseTo(0.8 * told.quantities.surfaceSpeed, 6)
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

  test('begins to brake where the energy left is what brake, friction and gravity take on the rest of the way', () => {
    for (const [from, to] of [
      [-0.6, 1.1],
      [1.1, -0.6],
      [-1.4, -0.2],
    ] as const) {
      const { quantities } = done('pivot', { ...exact, from, to, stops: null })
      const { brakingFrom, startTorque, peakSpeed } = quantities
      const way = Math.abs(to - brakingFrom!)
      const lifted = 4 * gravity * 0.4 * (Math.sin(to) - Math.sin(brakingFrom!))
      const kinetic = ((0.9 + 0.00004 * 80 ** 2) * peakSpeed ** 2) / 2
      expect(kinetic / ((startTorque + 0.5) * way + lifted)).toBeCloseTo(1, 4)
    }
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
