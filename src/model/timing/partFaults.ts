import type { Path } from '../errors.ts'
import type { Part } from './parts.ts'

/** Where two numbers of a part contradict each other; `bound` and `got` in the unit of the field (SI). */
export interface PartFault {
  path: Path
  rule: 'freeCurrent' | 'rod' | 'pressure' | 'flow'
  /** The other number of the part that decides: stall current, bore, or the point before. */
  bound: number
  got: number
}

/**
 * What a contract of single fields can not say: a motor draws most when it stalls, a rod is thinner than its cylinder, and
 * a compressor gives no more air against more pressure. The shares (half, 0.95) are where the formulas stop making sense.
 */
export function partFaults(part: Part): PartFault[] {
  switch (part.kind) {
    case 'motor': {
      const { freeCurrent, stallCurrent } = part
      if (freeCurrent <= stallCurrent / 2) return []
      return [{ path: ['freeCurrent'], rule: 'freeCurrent', bound: stallCurrent, got: freeCurrent }]
    }
    case 'cylinder': {
      const { bore, rod } = part
      return rod <= bore * 0.95 ? [] : [{ path: ['rod'], rule: 'rod', bound: bore, got: rod }]
    }
    case 'compressor':
      return part.flow.flatMap(([pressure, amount], index) => {
        const before = part.flow[index - 1]
        if (!before) return []
        const faults: PartFault[] = []
        if (pressure <= before[0])
          faults.push({ path: ['flow', index, 0], rule: 'pressure', bound: before[0], got: pressure })
        if (amount > before[1]) faults.push({ path: ['flow', index, 1], rule: 'flow', bound: before[1], got: amount })
        return faults
      })
    default:
      return []
  }
}
