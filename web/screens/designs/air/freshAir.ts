import type { StoredAir } from '../../../../src/model/documents/air.ts'
import type { Robot } from '../../../../src/model/documents/types.ts'
import { usesByStages } from '../../../../src/model/timing/index.ts'
import type { Tank } from '../../../../src/model/timing/parts.ts'
import { atmosphere } from '../../../units/measures.ts'

/** Working pressure to begin with (Pa above the room's): a round number that regulators of such robots are often set to. */
const overRoom = 400_000
/** Share of it that strokes have left, to begin with, once it is lost. */
const left = 0.6

/**
 * Stored air to begin with: a tank filled to nine tenths of what it may hold, no compressor, and the strokes that the
 * stages name.
 */
export function freshAir(robot: Robot, tank: Tank): StoredAir {
  const working = atmosphere + Math.min(overRoom, (tank.highestPressure - atmosphere) / 2)
  const trips = usesByStages(robot)
  return {
    tank,
    tanks: 1,
    stored: Math.max(working, Math.round((tank.highestPressure * 0.9) / 1000) * 1000),
    working,
    ambient: atmosphere,
    leak: 0,
    compressor: null,
    trips,
    autonomous: [],
    low: atmosphere + left * (working - atmosphere),
    slower: 3,
  }
}
