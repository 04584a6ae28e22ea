import type { Mechanism } from '../../../src/model/documents/mechanism.ts'
import type { MechanismAnswer } from '../../../src/model/timing/index.ts'

/** The mechanism to scale, moving with its numbers. */
export function MechanismDrawing(_: { mechanism: Mechanism; answer: MechanismAnswer }) {
  return null
}
