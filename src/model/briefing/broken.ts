import { inOrder } from '../event/order.ts'
import type { Match, Observation } from '../scouting/types.ts'

/** What scouts saw of a robot in a match that its pit crew looks after. Seconds are elapsed. */
export interface Broken {
  match: string
  absent: boolean
  /** When it stopped for good; null: it did not, or nobody said. */
  stoppedAt: number | null
  stops: { from: number; to: number | null }[]
  /** Seconds lost, the most that any record tells. */
  lostSeconds: number
  dropped: number
  notes: string[]
}

/** What was seen to break, stop or fall in a robot's matches, latest first; matches without any of that are left out. */
export function brokenIn(matches: readonly Match[], records: readonly Observation[]): Broken[] {
  return matches
    .toSorted((a, b) => inOrder(b, a))
    .map(({ id }) => of(id, records))
    .filter(
      ({ absent, stoppedAt, stops, lostSeconds, dropped, notes }) =>
        absent || stoppedAt !== null || stops.length > 0 || lostSeconds > 0 || dropped > 0 || notes.length > 0,
    )
}

function of(match: string, records: readonly Observation[]): Broken {
  const own = records.filter((each) => each.match === match && each.subject === 'robot')
  const most = (value: (record: Observation) => number) => Math.max(0, ...own.map(value))
  const stops = own.map(stopsOf).sort((a, b) => b.length - a.length)[0] ?? []
  const ended = own.flatMap(({ stoppedAt }) => stoppedAt ?? [])
  const open = stops.find(({ to }) => to === null)?.from
  return {
    match,
    absent: own.some(({ absent }) => absent === true),
    stoppedAt: ended[0] ?? open ?? null,
    stops: stops.filter(({ to }) => to !== null),
    lostSeconds: most(({ lostSeconds }) => lostSeconds ?? 0),
    dropped: most(({ timeline }) =>
      (timeline ?? []).reduce((sum, { what, n = 1 }) => sum + (what === 'dropped' ? n : 0), 0),
    ),
    notes: [...new Set(own.flatMap(({ note }) => (note?.trim() ? [note.trim()] : [])))],
  }
}

function stopsOf({ timeline = [] }: Observation): Broken['stops'] {
  const stops: Broken['stops'] = []
  for (const { what, elapsed } of timeline) {
    const last = stops.at(-1)
    if (what === 'stopped' && last?.to !== null) stops.push({ from: elapsed, to: null })
    if (what === 'running' && last?.to === null) last.to = elapsed
  }
  return stops
}
