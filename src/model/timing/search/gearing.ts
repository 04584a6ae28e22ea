import type { Mechanism } from '../../documents/mechanism.ts'
import { likelyOf } from '../answer/settle.ts'
import type { Uncertain } from '../types.ts'
import type { Searched, Sweep } from './sweep.ts'

/** What a design search changes of a mechanism. */
export interface Gearing {
  reduction: number
  motors: number
}

/** What a reduction may be at all, as in the contracts. */
export const reductionBounds = { low: 0.05, high: 5000 }

/** What can be searched of a mechanism; null where no motors turn it through a gearbox. */
export function searchedOf(mechanism: Mechanism): Pick<Sweep, 'calculator' | 'input'> | null {
  const { calculator, input } = mechanism
  if (calculator === 'pivot') return input.by === 'motor' ? { calculator, input } : null
  if (calculator === 'shot' || calculator === 'cylinder') return null
  return { calculator, input }
}

/** The gearing that an input has, its reduction at the likely value. */
export const gearingOf = ({ reduction, motors }: Searched[keyof Searched]): Gearing => ({
  reduction: typeof reduction === 'number' ? reduction : likelyOf(reduction),
  motors,
})

/** The same mechanism with another gearing; a reduction that is not known exactly keeps its spread in proportion. */
export function withGearing(mechanism: Mechanism, { reduction, motors }: Gearing): Mechanism {
  const searched = searchedOf(mechanism)
  if (!searched) return mechanism
  const input = { ...searched.input, motors, reduction: movedTo(searched.input.reduction, reduction) }
  return { ...mechanism, input } as Mechanism
}

function movedTo(reduction: Uncertain, likely: number): Uncertain {
  if (typeof reduction === 'number') return likely
  if (reduction.kind === 'lognormal') return { ...reduction, median: likely }
  const factor = likely / reduction.likely
  return {
    ...reduction,
    low: Math.max(reductionBounds.low, reduction.low * factor),
    likely,
    high: Math.min(reductionBounds.high, reduction.high * factor),
  }
}
