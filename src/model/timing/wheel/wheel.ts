import { type Calculator, electricUnits, type Solved } from '../answer/calculator.ts'
import { remark } from '../answer/remark.ts'
import type { WheelCurves, WheelQuantities } from '../answers.ts'
import { type Circuit, circuitOf } from '../electric/circuit.ts'
import { type Run, run } from '../electric/launch.ts'
import { electricWarnings, loadsOf } from '../electric/loads.ts'
import type { WheelInput } from '../inputs.ts'
import { drawnPoints, evenly } from '../numerics/trace.ts'
import type { Remark } from '../types.ts'

type Input = WheelInput<number>

/**
 * A wheel that stores the energy of a shot: constant torque up to the current limit's knee, then t = τ·ln((ω∞ − ω₀)/(ω∞ − ω)).
 * A shot takes the piece's energy over the share that is transferred; the wheel then comes back from √(ω² − 2E/J).
 */
export const wheel: Calculator<Input, WheelQuantities, WheelCurves> = {
  units: {
    ...electricUnits,
    inertia: 'kg·m²',
    drag: 'N·m',
    from: 'rad/s',
    target: 'rad/s',
    'shot.pieceMass': 'kg',
    'shot.exitSpeed': 'm/s',
    'shot.transfer': '',
  },
  seconds: (input) => {
    const start = startOf(input)
    if (start === null || tooSlow(input)) return null
    return turning(input, start).motion.toSpeed(input.target)
  },
  solve: (input): Solved<WheelQuantities, WheelCurves> => {
    const spinUp = turning(input, Math.min(input.from, input.target))
    const after = afterShot(input)
    const known = knownOf(input, spinUp, after)
    const why = tooSlow(input) ?? (input.stage === 'recovery' && after === null ? emptied(input) : null)
    if (why) return { possible: false, why, quantities: known, warnings: [] }
    const recovery = after === null ? null : turning(input, after)
    const timed = input.stage === 'recovery' && recovery ? recovery : spinUp
    const seconds = timed.motion.toSpeed(input.target)
    const loads = loadsOf(
      timed.circuit,
      [timed.from, Math.max(timed.from, Math.min(timed.motion.knee, input.target)), input.target].map(momentOf(timed)),
    )
    const time = evenly(0, seconds, drawnPoints)
    const speed = time.map(timed.motion.speedAt)
    return {
      possible: true,
      seconds,
      quantities: {
        ...loads,
        ...known,
        spinUpSeconds: spinUp.motion.toSpeed(input.target),
        recoverySeconds: recovery ? recovery.motion.toSpeed(input.target) : null,
      },
      curves: { time, speed, current: speed.map((each) => timed.circuit.currentAt(timed.motion.forceAt(each))) },
      warnings: [...electricWarnings(input, loads), ...warningsOf(known, input)],
    }
  },
}

interface Turning {
  circuit: Circuit
  motion: Run
  inertia: number
  from: number
}

function turning(input: Input, from: number): Turning {
  const circuit = circuitOf(input)
  const inertia = input.inertia + circuit.rotors
  const { limit: cap, standstill, perSpeed } = circuit
  return {
    circuit,
    inertia,
    from,
    motion: run({ mass: inertia, cap, standstill, perSpeed, resistance: input.drag, from }),
  }
}

const momentOf =
  ({ motion }: Turning) =>
  (speed: number) => ({ torque: motion.forceAt(speed), speed })

/** Speed right after a shot; null where there is no shot, or the wheel has not the energy for it. */
function afterShot(input: Input): number | null {
  if (input.shot === null) return null
  const left = input.target ** 2 - (2 * energyOfShot(input.shot)) / turning(input, 0).inertia
  return left > 0 ? Math.sqrt(left) : null
}

const energyOfShot = ({ pieceMass, exitSpeed, transfer }: NonNullable<Input['shot']>) =>
  (pieceMass * exitSpeed ** 2) / 2 / transfer

const startOf = (input: Input): number | null =>
  input.stage === 'recovery' ? afterShot(input) : Math.min(input.from, input.target)

function tooSlow(input: Input): Remark | null {
  const { motion, circuit } = turning(input, 0)
  const torque = Math.min(circuit.standstill, circuit.limit)
  if (torque <= Math.max(0, input.drag)) {
    const text = 'The motors turn with {torque} N·m at most, which does not overcome the drag of {drag} N·m'
    return remark('tooWeakToTurn', text, { torque, drag: input.drag })
  }
  if (input.target < motion.top) return null
  const text = 'The wheel never reaches {target} rad/s: with this reduction it gets to {top} rad/s'
  return remark('neverReachesSpeed', text, { target: input.target, top: motion.top })
}

function emptied(input: Input): Remark {
  const energy = (turning(input, 0).inertia * input.target ** 2) / 2
  const needed = input.shot ? energyOfShot(input.shot) : 0
  const text =
    'One shot takes {needed} J and the wheel holds {energy} J at its speed: it needs more inertia or more speed'
  return remark('shotEmptiesWheel', text, { needed, energy })
}

function knownOf(input: Input, { motion, inertia }: Turning, after: number | null) {
  return {
    freeSpeed: motion.top,
    kneeSpeed: motion.knee,
    timeConstant: motion.timeConstant,
    surfaceSpeed: (input.target * input.wheelDiameter) / 2,
    energy: (inertia * input.target ** 2) / 2,
    speedAfterShot: after,
    speedLost: after === null ? null : 1 - after / input.target,
  }
}

function warningsOf({ freeSpeed, speedLost }: { freeSpeed: number; speedLost: number | null }, input: Input): Remark[] {
  const warnings: Remark[] = []
  if (input.shot !== null && speedLost === null) {
    warnings.push({ ...emptied(input) })
  } else if (speedLost !== null && speedLost > 0.25) {
    const text = 'A shot takes {share} % of the speed: the next one is not like it until the wheel has come back'
    warnings.push(remark('losesMuchSpeed', text, { share: 100 * speedLost }))
  }
  if (input.target > 0.95 * freeSpeed) {
    const text =
      'The target is {share} % of the highest speed: the last part takes long and a weak battery may not get there'
    warnings.push(remark('nearFreeSpeed', text, { share: (100 * input.target) / freeSpeed }))
  }
  return warnings
}
