import type { AirInput } from '../inputs.ts'
import { areasOf } from '../pneumatic/gas.ts'

type Input = Pick<AirInput<number>, 'strokes' | 'working' | 'ambient'>

/**
 * What one cycle takes from behind the regulator: the volume that is filled to the working pressure (m³), less what the dead
 * volumes hold of the room's air already. A hard stop that shortens a stroke shortens its volume.
 */
export function demandOf(input: Input): { volume: number; freeAir: number } {
  const { strokes, working, ambient } = input
  let volume = 0
  for (const { cylinder, stop, deadVolume, out, back } of strokes) {
    const { full, ring } = areasOf(cylinder)
    const travel = Math.min(cylinder.stroke, stop ?? cylinder.stroke)
    const dead = (deadVolume * (working - ambient)) / working
    volume += out * (full * travel + dead) + back * (ring * travel + dead)
  }
  return { volume, freeAir: (volume * working) / ambient }
}
