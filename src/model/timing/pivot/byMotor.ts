import type { Solved } from '../answer/calculator.ts'
import type { PivotCurves, PivotQuantities } from '../answers.ts'
import { type Circuit, circuitOf } from '../electric/circuit.ts'
import { electricWarnings, loadsOf } from '../electric/loads.ts'
import type { MotorPivotInput } from '../inputs.ts'
import { drawnPoints, evenly } from '../numerics/trace.ts'
import { type Arm, armOf, arrivalWarning, wayForbidden } from './arm.ts'
import { type Turn, turnOf } from './turn.ts'

type Input = MotorPivotInput<number>

const isTurn = (turn: ReturnType<typeof turnOf>): turn is Turn => 'driving' in turn

function settingOf(input: Input) {
  const circuit = circuitOf(input)
  return { input, circuit, arm: armOf(input), inertia: input.inertia + circuit.rotors }
}

export function motorSeconds(input: Input): number | null {
  if (wayForbidden(input)) return null
  const turn = turnOf(settingOf(input), 1e-6)
  return isTurn(turn) ? turn.seconds : null
}

export function solveMotor(input: Input): Solved<PivotQuantities, PivotCurves> {
  const setting = settingOf(input)
  const { arm, circuit, inertia } = setting
  const known = {
    gravityTorque: arm.greatest(),
    startTorque: Math.min(circuit.limit, circuit.standstill),
    holdingCurrent: holdingCurrent(circuit, Math.max(0, Math.abs(arm.gravityAt(arm.end)) - input.friction)),
    strokeUsed: null,
    freeAir: null,
  }
  const forbidden = wayForbidden(input)
  const turn = forbidden ?? turnOf(setting, 1e-9, true)
  if (!('driving' in turn)) return { possible: false, why: turn, quantities: known, warnings: [] }
  const curves = curvesOf(turn, arm, circuit)
  const fastest = Math.max(turn.peak, ...curves.speed)
  const knee = Math.min(fastest, Math.max(0, (circuit.standstill - circuit.limit) / circuit.perSpeed))
  const torqueAt = (speed: number) => Math.min(circuit.limit, circuit.standstill - circuit.perSpeed * speed)
  const loads = loadsOf(
    circuit,
    [0, knee, turn.peak].map((speed) => ({ torque: torqueAt(speed), speed })),
  )
  const endEnergy = (inertia * turn.endSpeed ** 2) / 2
  return {
    possible: true,
    seconds: turn.seconds,
    quantities: {
      ...loads,
      ...known,
      peakSpeed: fastest,
      endSpeed: turn.endSpeed,
      endEnergy,
      brakingFrom: turn.brakingFrom === null ? null : arm.angleAt(turn.brakingFrom),
    },
    curves,
    warnings: [...electricWarnings(input, loads), ...arrivalWarning(input, endEnergy)],
  }
}

/** Of one motor that holds a torque at a standstill (A); the gearbox's losses are taken to help nothing. */
const holdingCurrent = (circuit: Circuit, torque: number): number => circuit.currentAt(torque) - circuit.currentAt(0)

function curvesOf(turn: Turn, arm: Arm, circuit: Circuit): PivotCurves {
  const time = evenly(0, turn.seconds, drawnPoints)
  const points = time.map((seconds) => {
    if (seconds <= turn.drivingSeconds || !turn.braking) {
      const [turned, speed] = turn.driving.at(seconds) as unknown as [number, number]
      const torque = Math.min(circuit.limit, circuit.standstill - circuit.perSpeed * speed)
      return { turned, speed, current: circuit.currentAt(torque) }
    }
    const [left, speed] = turn.braking.at(turn.seconds - seconds) as unknown as [number, number]
    return { turned: arm.end - left, speed, current: -circuit.currentAt(Math.min(circuit.limit, circuit.standstill)) }
  })
  return {
    time,
    angle: points.map(({ turned }) => arm.angleAt(turned)),
    speed: points.map(({ speed }) => arm.sign * speed),
    current: points.map(({ current }) => current),
    pressure: [],
    backPressure: [],
  }
}
