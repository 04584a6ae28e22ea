import { remark } from '../answer/remark.ts'
import type { ElectricQuantities } from '../answers.ts'
import type { Electric } from '../inputs.ts'
import type { Motor } from '../parts.ts'
import type { Remark } from '../types.ts'
import type { Circuit } from './circuit.ts'

/** A moment of the way: output torque and output speed. */
export interface Moment {
  torque: number
  speed: number
}

/**
 * Where motors and source are pushed hardest. While a limit holds the torque, the source's current rises with speed; beyond
 * the knee it falls: so start and knee (or the highest speed, if that is less) hold the extremes.
 */
export function loadsOf(circuit: Circuit, moments: readonly Moment[]): ElectricQuantities {
  const currents = moments.map(({ torque }) => circuit.currentAt(torque))
  const sources = moments.map(({ speed }, i) => circuit.sourceAt(currents[i]!, speed))
  return {
    motorCurrent: Math.max(...currents),
    sourceCurrent: Math.max(...sources.map(({ current }) => current)),
    sourceVoltage: Math.min(...sources.map(({ voltage }) => voltage)),
  }
}

/** What is worth saying about them. */
export function electricWarnings(input: Electric<number>, loads: ElectricQuantities): Remark[] {
  const { lowestVoltage, currentLimit, motor } = input
  const warnings: Remark[] = [...implausible(motor)]
  if (lowestVoltage !== null && loads.sourceVoltage < lowestVoltage) {
    warnings.push(
      remark(
        'sourceVoltageLow',
        'The source falls to {voltage} V, below the {lowest} V at which controllers cut back',
        {
          voltage: loads.sourceVoltage,
          lowest: lowestVoltage,
        },
      ),
    )
  }
  if (currentLimit === null && loads.motorCurrent > 0.9 * motor.stallCurrent) {
    warnings.push(
      remark('nearStall', 'Each motor draws {current} A at the start, about its stall current, and no limit is set', {
        current: loads.motorCurrent,
      }),
    )
  } else if (currentLimit !== null && loads.motorCurrent > 0.999 * currentLimit) {
    warnings.push(
      remark('currentLimited', 'The current limit of {limit} A per motor holds the torque back', {
        limit: currentLimit,
      }),
    )
  }
  return warnings
}

/** A motor can not turn more power than it gets: the torque of an ampere is at most the voltage of a rad/s. */
function implausible({ nominalVoltage, freeSpeed, freeCurrent, stallTorque, stallCurrent }: Motor): Remark[] {
  const voltPerSpeed = (nominalVoltage * (1 - freeCurrent / stallCurrent)) / freeSpeed
  const torquePerAmpere = stallTorque / (stallCurrent - freeCurrent)
  if (torquePerAmpere <= 1.1 * voltPerSpeed) return []
  const text = 'The motor’s numbers do not fit together: {share} % more torque than its current and free speed allow'
  return [remark('motorDoubtful', text, { share: 100 * (torquePerAmpere / voltPerSpeed - 1) })]
}
