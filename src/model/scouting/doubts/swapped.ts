import type { Checked, OneRecord } from './sides.ts'
import { logDensity, type Off } from './spread.ts'

export interface Swap {
  record: OneRecord
  /** Places of the goals. */
  pair: [number, number]
  /** Pieces that it has more at one of them. */
  moved: number
  /** How much more likely the result is, as ln, if the record has the two goals the other way round. */
  gain: number
}

/**
 * What each record of a side would explain if it had taken two goals for each other: the difference then is (+, −) by just
 * what the record has more at one of them.
 *
 * @param off official less scouted, goals first
 */
export function swapsOf({ records }: Checked, off: Off, sds: readonly number[], goals: number): Swap[] {
  const offGoals = off.slice(0, goals)
  const now = logDensity(offGoals, sds)
  return records.flatMap((record): Swap[] => {
    const { pieces, share } = record
    if (!pieces) return []
    const found: Swap[] = []
    for (let a = 0; a < goals; a++)
      for (let b = a + 1; b < goals; b++) {
        const moved = share * ((pieces[b] as number) - (pieces[a] as number))
        if (moved === 0 || off[a] == null || off[b] == null) continue
        const then = offGoals.map((value, k) =>
          value === null ? null : k === a ? value - moved : k === b ? value + moved : value,
        )
        found.push({ record, pair: [a, b], moved: Math.abs(moved), gain: logDensity(then, sds) - now })
      }
    return found
  })
}
