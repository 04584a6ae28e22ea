import type { RollersInput } from '../../../../src/model/timing/index.ts'
import type { Bounds } from './fit.ts'

/** Rollers in a row over a plate, and a piece between both. Metres; x is how far the piece's middle has come. */
export interface Bed {
  /** A piece's size, which nobody gives us: large enough that one roller always has it. */
  piece: number
  /** Where the rollers' axes are. */
  rollers: number[]
  axisHeight: number
  bounds: Bounds
}

export function bedOf({ rollerDiameter, travel }: RollersInput<number>): Bed {
  const piece = Math.max(2.6 * rollerDiameter, 0.25 * travel)
  const gaps = Math.max(1, Math.ceil(travel / (0.8 * piece)))
  // Rollers as thick as the way between them would stand in each other: then there is one.
  const spacing = travel / gaps
  const count = spacing < rollerDiameter * 1.02 ? Math.floor(travel / (1.02 * rollerDiameter)) + 1 : gaps + 1
  const first = 0.4 * piece
  const step = count > 1 ? travel / (count - 1) : 0
  return {
    piece,
    rollers: Array.from({ length: count }, (_, i) => first + i * step),
    axisHeight: piece + rollerDiameter / 2,
    bounds: {
      left: -0.55 * piece - rollerDiameter / 2,
      right: travel + 0.4 * piece + Math.max(0.3 * piece, rollerDiameter / 2),
      bottom: 0,
      top: piece + rollerDiameter,
    },
  }
}
