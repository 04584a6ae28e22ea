import type { CylinderInput } from '../../../../src/model/timing/index.ts'
import type { Bounds } from './fit.ts'

/** A cylinder cut open, lying along x from its closed end. Metres. */
export interface Tube {
  bore: number
  rod: number
  /** Of walls and caps, and of the piston. */
  wall: number
  piston: number
  /** Inside, from cap to cap. */
  inside: number
  /** Where the piston's near face is before and after the movement. */
  from: number
  to: number
  /** Face at which the hard stop ends it; null: the end of the stroke does. */
  stop: number | null
  /** From the piston's far face to the block that it moves. */
  rodLength: number
  block: number
  bounds: Bounds
}

export function tubeOf({ cylinder, direction, stop }: CylinderInput<number>): Tube {
  const { bore, rod, stroke } = cylinder
  const travel = Math.min(stroke, stop ?? Number.POSITIVE_INFINITY)
  const [wall, piston, block] = [0.12 * bore, 0.25 * bore, 0.9 * bore]
  const inside = stroke + piston
  // With the rod drawn in, a little of it still sticks out of its cap.
  const rodLength = stroke + wall + 0.4 * bore
  const from = direction === 'extend' ? 0 : stroke
  const to = direction === 'extend' ? travel : stroke - travel
  return {
    bore,
    rod,
    wall,
    piston,
    inside,
    from,
    to,
    stop: stop !== null && stop < stroke ? to : null,
    rodLength,
    block,
    bounds: {
      left: -wall,
      right: stroke + piston + rodLength + block,
      bottom: -bore / 2 - wall,
      top: bore / 2 + wall,
    },
  }
}
