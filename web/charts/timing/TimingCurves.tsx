import type { Mechanism } from '../../../src/model/documents/mechanism.ts'
import type { MechanismAnswer } from '../../../src/model/timing/index.ts'

/** Speed, current, distance and pressure over time, and the flight of a piece. */
export function TimingCurves(_: { mechanism: Mechanism; answer: MechanismAnswer }) {
  return null
}
