import { refusal } from '../documents/sentences.ts'
import { type Distribution, distributionOf } from '../duration/index.ts'
import type { Input } from './types.ts'

/**
 * What is believed about an input's level: a beta-PERT with λ = 4 between low and high, in the input's own unit, which
 * may be negative. Mean (low + 4 likely + high) / 6, variance (mean − low)(high − mean) / 7; low = high is a point mass.
 * Throws ModelError 'invalid' unless low ≤ likely ≤ high.
 */
export function inputBelief(input: Input): Distribution {
  const { id, low, likely, high } = input
  if (!(Number.isFinite(low) && low <= likely && likely <= high && Number.isFinite(high))) {
    throw refusal('invalid', ['wrongOrder', { input: id, low, likely, high }])
  }
  return distributionOf({ kind: 'range', low, likely, high })
}
