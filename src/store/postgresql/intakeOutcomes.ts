import { bodyIn, textIn } from '../../model/scouting/cells.ts'
import type { Place } from '../records/add.ts'
import type { Accepted, ApartReason, Batch, Cells, Outcome } from '../records/types.ts'
import { type ApartRow, type FreshRow, keyOf } from './intakeQueries.ts'

/** What was there before, by `keyOf`. */
interface Before {
  /** Events, by workspace and id. */
  events: ReadonlySet<string>
  /** Hashes of records, by workspace and id. */
  before: ReadonlyMap<string, string>
  /** Records and undecided rows of devices, by workspace and device. */
  counted: ReadonlyMap<string, { held: number; apart: number }>
}

/** A batch whose rows are at hand. */
export interface Handed {
  place: Place
  batch: Batch & { rows: readonly Cells[] }
}

/**
 * What becomes of each row, batch after batch and row after row, as if each were written before the next is looked at: of two
 * rows with one id the first is held and the second compared with it.
 */
export function outcomesOf(together: readonly Handed[], { events, before, counted }: Before) {
  const fresh: FreshRow[] = []
  const apart: ApartRow[] = []
  const held = new Map(before)
  const counts = new Map([...counted].map(([key, count]) => [key, { ...count }]))

  function outcomeOf(cells: Cells, { place, person }: Pick<FreshRow, 'place' | 'person'>): Outcome {
    const { workspaceId } = place
    const known = events.has(keyOf(workspaceId, textIn(cells, 'event')))
    const key = keyOf(workspaceId, textIn(cells, 'id'))
    const there = held.get(key)
    if (known && there !== undefined && there === textIn(cells, 'hash')) return { outcome: 'held', again: true }
    if (bodyIn(cells) === null) return { outcome: 'missing' }
    if (!known || there !== undefined) {
      const reason: ApartReason = known ? 'otherContent' : 'unknownEvent'
      apart.push({ place, person, cells, reason })
      return { outcome: 'apart', reason }
    }
    held.set(key, textIn(cells, 'hash'))
    const count = counts.get(keyOf(workspaceId, textIn(cells, 'device')))
    if (count) count.held++
    fresh.push({ place, person, cells })
    return { outcome: 'held', again: false }
  }

  const batches = together.map(({ place, batch }) => {
    const [freshFrom, apartFrom] = [fresh.length, apart.length]
    const outcomes = batch.rows.map((cells) => outcomeOf(cells, { place, person: batch.person }))
    const key = keyOf(place.workspaceId, batch.device)
    return {
      outcomes,
      key,
      place,
      held: counts.get(key)?.held ?? 0,
      events: new Set(fresh.slice(freshFrom).map(({ cells }) => textIn(cells, 'event'))),
      apart: apart.slice(apartFrom),
    }
  })

  /** @param kept rows of `apart` that were not kept before */
  function accepted(kept: ReadonlySet<ApartRow>): Accepted[] {
    return batches.map(({ outcomes, key, place, held, events, apart: own }) => {
      for (const row of own) {
        const count = counts.get(keyOf(place.workspaceId, textIn(row.cells, 'device')))
        if (count && kept.has(row)) count.apart++
      }
      const quarantined = counts.get(key)?.apart ?? 0
      const newly = new Set(own.filter((row) => kept.has(row)).map(({ cells }) => textIn(cells, 'event')))
      const receipt = { held, quarantined, at: place.at.toISOString() }
      return { outcomes, receipt, fresh: [...events], apart: [...newly] }
    })
  }

  return { fresh, apart, accepted }
}
