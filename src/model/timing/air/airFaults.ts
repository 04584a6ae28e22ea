import type { StoredAir } from '../../documents/air.ts'
import type { Path } from '../../errors.ts'

/** Where two pressures of a robot's stored air contradict each other (Pa). */
export interface AirFault {
  path: Path
  rule: 'lowBelowRoom' | 'lowAboveWorking' | 'onAboveOff'
  /** The other pressure, which decides. */
  bound: number
  got: number
}

/**
 * What single fields can not say: strokes need more than the room's pressure, the low pressure is what is left of the working
 * one, and a compressor starts before it ends. What only makes the air useless, or dangerous, is an answer of `airPlan`.
 */
export function airFaults({ low, working, ambient, compressor }: StoredAir): AirFault[] {
  const faults: AirFault[] = []
  if (low <= ambient) faults.push({ path: ['low'], rule: 'lowBelowRoom', bound: ambient, got: low })
  else if (low > working) faults.push({ path: ['low'], rule: 'lowAboveWorking', bound: working, got: low })
  if (compressor && compressor.on > compressor.off)
    faults.push({ path: ['compressor', 'on'], rule: 'onAboveOff', bound: compressor.off, got: compressor.on })
  return faults
}
