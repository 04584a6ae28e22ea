import type { Happening } from '../types.ts'
import { addTo, attemptsOf } from './counted.ts'
import { type Interval, overlap } from './intervals.ts'
import type { Cycle, FirstTrip, GoalCounts, Trip } from './types.ts'

/** Seconds within which placements are one trip where nobody notes pieces collected. */
export const tripGap = 2

/** What of a record the trips are made of. */
export interface Watch {
  /** Of teleop, in the order of time. */
  timeline: readonly Happening[]
  /** From teleop's start until the robot stops for good, departs, or the buzzer. */
  play: Interval
  /** When it was out of sight. */
  unseen: readonly Interval[]
  /** When it stood or defended: no part of a cycle. */
  paused: readonly Interval[]
  /** Whether it had collected a piece after its last placement in autonomous; null where no piece was noted as collected. */
  collectedBefore: boolean | null
  gap?: number
}

interface Group {
  trip: Trip
  ends: number
  /** Of its last piece. */
  collected: number | null
  /** Where its pieces were collected, as far as somebody said. */
  sources: string[]
  /** Its last placement. */
  last: Happening
}

/** Trips that ended while the robot was in view, one after the other, and the one in hand when it went out of it. */
export interface View {
  /** From the end of the first trip, which has no beginning that could be timed. */
  from: number
  trips: ViewedTrip[]
}

/** A trip with where it began, led and ended. */
export interface ViewedTrip {
  /** Without its pauses. */
  seconds: number
  /** False: it was not over when it was last seen. */
  ended: boolean
  /** Of the seconds until the last piece was collected; null where nobody noted it. */
  collecting: number | null
  /** The last placement of the trip before it. */
  before: Happening
  sources: string[]
  /** Placed, hit or miss; null of a trip that did not end. */
  placed: { goals: GoalCounts; last: Happening } | null
}

const placed = ({ what }: Happening) => what === 'scored' || what === 'missed'

/**
 * Trips and the times between their ends. A trip ends at the last placement before the next piece is collected; in a record
 * without pieces collected, placements that follow within the gap are one. A trip during which the robot went out of sight, and
 * the one in hand at the end, have lasted at least so long; the first trip, and the first one after a gap in the view, have no
 * beginning that could be timed.
 */
export function tripsOf(watch: Watch): { trips: Trip[]; cycles: Cycle[]; first: FirstTrip | null } {
  const trips: Trip[] = []
  let first: FirstTrip | null = null
  for (const { groups, fromStart } of groupsInViews(watch))
    for (const [index, { trip, ends, collected }] of groups.entries()) {
      const isFirst = fromStart && index === 0
      trips.push({ ...trip, first: isFirst })
      if (!isFirst) continue
      const preloaded = watch.collectedBefore === null ? null : !watch.collectedBefore && collected === null
      first = { seconds: ends - watch.play.from, pieces: attemptsOf(trip.goals), preloaded }
    }
  const cycles = viewsOf(watch).flatMap((view) =>
    view.trips.map(({ seconds, ended, collecting }) => ({ seconds, ended, collecting, weight: 1 })),
  )
  return { trips, cycles, first }
}

/** The timed trips of each stretch in which the robot was seen, with where they led. */
export function viewsOf(watch: Watch): View[] {
  const { paused } = watch
  return groupsInViews(watch).flatMap(({ groups, to, open }) => {
    const trips: ViewedTrip[] = []
    let before: Group | null = null
    for (const group of groups) {
      if (before !== null) {
        const { trip, ends, collected, sources, last } = group
        const seconds = without(before.ends, ends, paused)
        const collecting =
          collected === null || collected < before.ends ? null : without(before.ends, collected, paused)
        const placed = { goals: trip.goals, last }
        if (seconds > 0) trips.push({ seconds, ended: true, collecting, before: before.last, sources, placed })
      }
      before = group
    }
    if (before === null) return []
    const rest = without(before.ends, to, paused)
    if (rest > 0)
      trips.push({ seconds: rest, ended: false, collecting: null, before: before.last, sources: open, placed: null })
    return [{ from: groups[0]!.ends, trips }]
  })
}

function groupsInViews({ timeline, play, unseen, collectedBefore, gap = tripGap }: Watch) {
  return inView(play, unseen).map(({ from, to }) => {
    const last = to === play.to
    const own = timeline.filter(({ elapsed }) => elapsed >= from && (elapsed < to || (last && elapsed >= to)))
    return { to, fromStart: from === play.from, ...groupsOf(own, collectedBefore !== null, gap) }
  })
}

/** Seconds between two moments, without its pauses. */
const without = (from: number, to: number, paused: readonly Interval[]) =>
  to > from ? to - from - overlap({ from, to }, paused) : 0

/** The stretches in which it was seen, in the order of time. */
function inView(play: Interval, unseen: readonly Interval[]): Interval[] {
  const views: Interval[] = []
  let from = play.from
  for (const gap of unseen) {
    if (gap.from > from) views.push({ from, to: Math.min(gap.from, play.to) })
    from = Math.max(from, gap.to)
  }
  if (from < play.to) views.push({ from, to: play.to })
  return views
}

/** `open`: where pieces were collected that were not placed any more. */
function groupsOf(timeline: readonly Happening[], noted: boolean, gap: number): { groups: Group[]; open: string[] } {
  const groups: Group[] = []
  let group: Group | null = null
  let collected: number | null = null
  let open: string[] = []
  for (const each of timeline) {
    if (each.what === 'collected') {
      collected = each.elapsed
      group = null
      if (each.source !== undefined) open.push(each.source)
      continue
    }
    if (!placed(each)) continue
    if (!group || (!noted && each.elapsed - group.ends > gap)) {
      const trip: Trip = { goals: {}, first: false, weight: 1 }
      group = { trip, ends: each.elapsed, collected, sources: open, last: each }
      groups.push(group)
      collected = null
      open = []
    }
    const n = each.n ?? 1
    const count = each.what === 'scored' ? { scored: n, missed: 0 } : { scored: 0, missed: n }
    if (each.goal !== undefined) addTo(group.trip.goals, each.goal, count)
    group.ends = each.elapsed
    group.last = each
  }
  return { groups, open }
}
