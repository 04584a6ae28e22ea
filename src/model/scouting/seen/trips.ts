import type { Happening } from '../types.ts'
import { addTo, attemptsOf } from './counted.ts'
import { type Interval, overlap } from './intervals.ts'
import type { Cycle, FirstTrip, Trip } from './types.ts'

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
}

const placed = ({ what }: Happening) => what === 'scored' || what === 'missed'

/**
 * Trips and the times between their ends. A trip ends at the last placement before the next piece is collected; in a record
 * without pieces collected, placements that follow within the gap are one. A trip during which the robot went out of sight, and
 * the one in hand at the end, have lasted at least so long; the first trip, and the first one after a gap in the view, have no
 * beginning that could be timed.
 */
export function tripsOf(watch: Watch): { trips: Trip[]; cycles: Cycle[]; first: FirstTrip | null } {
  const { play, unseen, paused } = watch
  const noted = watch.collectedBefore !== null
  const views = viewsOf(play, unseen)
  const trips: Trip[] = []
  const cycles: Cycle[] = []
  let first: FirstTrip | null = null
  for (const view of views) {
    const last = view.to === play.to
    const own = watch.timeline.filter(
      ({ elapsed }) => elapsed >= view.from && (elapsed < view.to || (last && elapsed >= view.to)),
    )
    const groups = groupsOf(own, noted, watch.gap ?? tripGap)
    const fromStart = view.from === play.from
    let before: number | null = null
    for (const [index, { trip, ends, collected }] of groups.entries()) {
      const isFirst = fromStart && index === 0
      trips.push({ ...trip, first: isFirst })
      if (isFirst) {
        const preloaded = noted ? !watch.collectedBefore && collected === null : null
        first = { seconds: ends - play.from, pieces: attemptsOf(trip.goals), preloaded }
      } else if (before !== null) {
        const seconds = without(before, ends, paused)
        const until = collected === null || collected < before ? null : without(before, collected, paused)
        if (seconds > 0) cycles.push({ seconds, ended: true, collecting: until, weight: 1 })
      }
      before = ends
    }
    const rest = before === null ? 0 : without(before, view.to, paused)
    if (rest > 0) cycles.push({ seconds: rest, ended: false, collecting: null, weight: 1 })
  }
  return { trips, cycles, first }
}

/** Seconds between two moments, without its pauses. */
const without = (from: number, to: number, paused: readonly Interval[]) =>
  to > from ? to - from - overlap({ from, to }, paused) : 0

/** The stretches in which it was seen, in the order of time. */
function viewsOf(play: Interval, unseen: readonly Interval[]): Interval[] {
  const views: Interval[] = []
  let from = play.from
  for (const gap of unseen) {
    if (gap.from > from) views.push({ from, to: Math.min(gap.from, play.to) })
    from = Math.max(from, gap.to)
  }
  if (from < play.to) views.push({ from, to: play.to })
  return views
}

function groupsOf(timeline: readonly Happening[], noted: boolean, gap: number): Group[] {
  const groups: Group[] = []
  let open: Group | null = null
  let collected: number | null = null
  for (const each of timeline) {
    if (each.what === 'collected') {
      collected = each.elapsed
      open = null
      continue
    }
    if (!placed(each)) continue
    if (!open || (!noted && each.elapsed - open.ends > gap)) {
      open = { trip: { goals: {}, first: false, weight: 1 }, ends: each.elapsed, collected }
      groups.push(open)
      collected = null
    }
    const n = each.n ?? 1
    const count = each.what === 'scored' ? { scored: n, missed: 0 } : { scored: 0, missed: n }
    if (each.goal !== undefined) addTo(open.trip.goals, each.goal, count)
    open.ends = each.elapsed
  }
  return groups
}
