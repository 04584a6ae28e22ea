import { type Calculator, electricUnits, type Solved } from '../answer/calculator.ts'
import { remark } from '../answer/remark.ts'
import type { MotionCurves, RollersQuantities } from '../answers.ts'
import { type Circuit, circuitOf } from '../electric/circuit.ts'
import { type Run, run } from '../electric/launch.ts'
import { electricWarnings, loadsOf } from '../electric/loads.ts'
import type { RollersInput } from '../inputs.ts'
import { drawnPoints, evenly } from '../numerics/trace.ts'
import type { Remark } from '../types.ts'

type Input = RollersInput<number>

/**
 * Rollers that draw a piece in. The piece is pushed by what the rollers grip it with, or by what the motors can push, if that
 * is less, up to the surface speed without its slip; the rollers are taken to run when they meet it, and their own inertia
 * is left out. In closed form.
 */
export const rollers: Calculator<Input, RollersQuantities, MotionCurves> = {
  units: {
    ...electricUnits,
    rollerDiameter: 'm',
    travel: 'm',
    pieceMass: 'kg',
    grip: 'N',
    drag: 'N',
    slip: '',
  },
  seconds: (input) => {
    const { motion, stuck } = pulled(input)
    return stuck ? null : motion.toDistance(input.travel)
  },
  solve: (input): Solved<RollersQuantities, MotionCurves> => {
    const { motion, circuit, radius, stuck, stallForce } = pulled(input)
    const surfaceSpeed = (circuit.standstill / circuit.perSpeed) * radius
    const ratio = input.driveSpeed > 0 ? surfaceSpeed / input.driveSpeed : null
    if (stuck) return { possible: false, why: stuck, quantities: { surfaceSpeed, ratio, stallForce }, warnings: [] }
    const seconds = motion.toDistance(input.travel)
    const pieceSpeed = motion.speedAt(seconds)
    const moment = (speed: number) => ({
      torque: motion.forceAt(speed) * radius,
      speed: speed / (1 - input.slip) / radius,
    })
    const loads = loadsOf(circuit, [0, Math.min(motion.knee, pieceSpeed), pieceSpeed].map(moment))
    const time = evenly(0, seconds, drawnPoints)
    return {
      possible: true,
      seconds,
      quantities: {
        ...loads,
        surfaceSpeed,
        pieceSpeed,
        ratio,
        stallForce,
        slidingDistance: Math.min(input.travel, motion.distanceAt(motion.toSpeed(motion.knee))),
      },
      curves: {
        time,
        speed: time.map(motion.speedAt),
        distance: time.map(motion.distanceAt),
        current: time.map((at) => circuit.currentAt(motion.forceAt(motion.speedAt(at)) * radius)),
      },
      warnings: [...electricWarnings(input, loads), ...ratioWarnings(ratio)],
    }
  },
}

interface Pulled {
  circuit: Circuit
  radius: number
  motion: Run
  stallForce: number
  stuck: Remark | null
}

function pulled(input: Input): Pulled {
  const { grip, drag, pieceMass, slip } = input
  const circuit = circuitOf(input)
  const radius = input.rollerDiameter / 2
  const standstill = circuit.standstill / radius
  const stallForce = Math.min(standstill, circuit.limit / radius)
  const cap = Math.min(grip, circuit.limit / radius)
  // The surface runs ahead of the piece by the slip, so that the motors feel more speed than the piece has.
  const perSpeed = circuit.perSpeed / radius ** 2 / (1 - slip)
  const motion = run({ mass: pieceMass, cap, standstill, perSpeed, resistance: drag, from: 0 })
  return { circuit, radius, motion, stallForce, stuck: whyStuck({ grip, drag, stallForce }) }
}

function whyStuck({ grip, drag, stallForce }: { grip: number; drag: number; stallForce: number }): Remark | null {
  if (grip <= drag) {
    const text = 'The piece slips: the rollers grip it with {grip} N and {drag} N hold it back'
    return remark('pieceSlips', text, { grip, drag })
  }
  if (stallForce > drag) return null
  const text = 'The rollers stall: the motors push with {force} N at most and {drag} N hold the piece back'
  return remark('rollersStall', text, { force: stallForce, drag })
}

/** Common practice, without a source: surface speed about twice the drive speed. */
function ratioWarnings(ratio: number | null): Remark[] {
  if (ratio === null || ratio >= 1.5) return []
  if (ratio <= 1) {
    const text = 'The rollers are no quicker than the robot drives ({ratio} times): the piece is pushed away'
    return [remark('slowerThanDrive', text, { ratio })]
  }
  const text = 'The rollers are only {ratio} times as quick as the robot drives; about twice is common practice'
  return [remark('hardlyQuickerThanDrive', text, { ratio })]
}
