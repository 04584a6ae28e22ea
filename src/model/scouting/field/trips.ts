import type { Run } from './runs.ts'
import type { LeftOutReason } from './types.ts'
import type { Way, Ways } from './ways.ts'

/** A trip that is put against the model. */
export interface FieldTrip {
  seconds: number
  ended: boolean
  collecting: number | null
  /** 1; less where several records of a run stand for one. */
  weight: number
  /** Place of its run. */
  run: number
  /** Null of a trip that was cut off: where it would have led is not known. */
  way: Way | null
}

/** What of a run’s first record the model is to do again: the ways in their order, and the seconds that there were for them. */
export interface Stretch {
  run: number
  room: number
  ways: Way[]
}

export interface Sorted {
  trips: FieldTrip[]
  stretches: Stretch[]
  leftOut: Map<LeftOutReason, number>
  sourceUnknown: number
  defended: number
}

/** Trips by whether the design can be asked about them. */
export function sortedTrips(runs: readonly Run[], ways: Ways): Sorted {
  const all: Sorted = { trips: [], stretches: [], leftOut: new Map(), sourceUnknown: 0, defended: 0 }
  const without = (reason: LeftOutReason) => all.leftOut.set(reason, (all.leftOut.get(reason) ?? 0) + 1)
  for (const [run, { records }] of runs.entries()) {
    const weight = 1 / records.length
    for (const [record, { views, defended }] of records.entries()) {
      if (record === 0) all.defended += defended
      for (const view of views) {
        const own: FieldTrip[] = []
        for (const trip of view.trips) {
          const { seconds, ended, collecting, sources } = trip
          if (!ended) {
            if (ways.canCollect(sources)) own.push({ seconds, ended, collecting: null, weight, run, way: null })
            continue
          }
          const way = ways.of(trip)
          if (typeof way === 'string') {
            if (record === 0) without(way)
            continue
          }
          if (record === 0 && sources.length === 0) all.sourceUnknown++
          own.push({ seconds, ended, collecting, weight, run, way })
        }
        all.trips.push(...own)
        const room = own.reduce((sum, { seconds }) => sum + seconds, 0)
        if (record === 0 && room > 0) all.stretches.push({ run, room, ways: own.flatMap(({ way }) => way ?? []) })
      }
    }
  }
  return all
}
