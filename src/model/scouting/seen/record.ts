import type { Game } from '../../documents/types.ts'
import type { Happening, Observation } from '../types.ts'
import { addTo, attemptsOf } from './counted.ts'
import { contains, type Interval, intervalsOf, lengthOf, lessAll, overlap } from './intervals.ts'
import { tripsOf, type Watch } from './trips.ts'
import type { Departure, GoalCounts, Seen, SeenDefence, SeenTeleop } from './types.ts'

const placements = new Set(['scored', 'missed'])

/** What one record says of a robot in a match of a game's clock. */
export function seenIn({ clock }: Pick<Game, 'clock'>, observation: Observation): Seen {
  const { id, absent, leftStart, routine, startSpot, finish, fouls, stoppedAt } = observation
  const timeline = [...(observation.timeline ?? [])].sort((a, b) => a.elapsed - b.elapsed)
  const teleop: Interval = { from: clock.auto + clock.pause, to: clock.auto + clock.pause + clock.teleop }
  const stop = stopOf(timeline, stoppedAt)
  const watched = observation.timeline !== undefined || observation.counts !== undefined
  const unseenInAuto = lengthOf(intervalsOf(timeline, 'unseen', { from: 0, to: clock.auto })) > 0
  return {
    records: [id],
    absent: absent === true,
    stopped: stop !== null && stop < teleop.to,
    autonomous: absent || !watched || unseenInAuto ? null : placedIn(observation, timeline, { teleop, period: 'auto' }),
    left: leftStart ?? null,
    routine: routine ?? null,
    startSpot: startSpot ?? null,
    teleop: absent || !watched ? null : teleopOf(observation, timeline, teleop, stop),
    finish: absent ? undefined : finish,
    fouls: absent || !watched ? null : (fouls ?? { minor: 0, major: 0 }),
  }
}

/** When it stopped and did not run again. */
function stopOf(timeline: readonly Happening[], stoppedAt: number | undefined): number | null {
  let stop: number | null = null
  let said = false
  for (const { what, elapsed } of timeline) {
    if (what === 'stopped') stop ??= elapsed
    else if (what === 'running') stop = null
    else continue
    said = true
  }
  return said ? stop : (stoppedAt ?? null)
}

function placedIn(
  { counts }: Observation,
  timeline: readonly Happening[],
  { teleop, period }: { teleop: Interval; period: 'auto' | 'teleop' },
): GoalCounts {
  const goals: GoalCounts = {}
  for (const { what, goal, n = 1, elapsed } of timeline) {
    if (goal === undefined || !placements.has(what) || elapsed < teleop.from !== (period === 'auto')) continue
    addTo(goals, goal, what === 'scored' ? { scored: n, missed: 0 } : { scored: 0, missed: n })
  }
  for (const count of counts ?? []) if (count.period === period) addTo(goals, count.goal, count)
  return goals
}

/** When it departed, as a moment; whoever places something afterwards had not. */
function departedAt(
  { departedAt: said, finish }: Observation,
  timeline: readonly Happening[],
): number | null | 'unknown' {
  const left = timeline.findLast(({ what }) => what === 'left')?.elapsed ?? said
  if (left === undefined) return finish?.attempted != null || finish?.achieved != null ? 'unknown' : null
  return timeline.some(({ what, elapsed }) => placements.has(what) && elapsed > left + 2) ? null : left
}

/** What of a record its timed trips are made of; null where it was absent or has no times. */
export function watchOf({ clock }: Pick<Game, 'clock'>, observation: Observation): Watch | null {
  if (observation.absent || !observation.timeline) return null
  const timeline = [...observation.timeline].sort((a, b) => a.elapsed - b.elapsed)
  const teleop: Interval = { from: clock.auto + clock.pause, to: clock.auto + clock.pause + clock.teleop }
  return watched(observation, timeline, teleop, stopOf(timeline, observation.stoppedAt)).watch
}

function watched(observation: Observation, timeline: readonly Happening[], teleop: Interval, stop: number | null) {
  const departs = departedAt(observation, timeline)
  const until = Math.min(teleop.to, stop ?? teleop.to, typeof departs === 'number' ? departs : teleop.to)
  const play = { from: teleop.from, to: Math.max(teleop.from, until) }
  const unseen = intervalsOf(timeline, 'unseen', play)
  const defending = intervalsOf(timeline, 'defending', play)
  const paused = [...intervalsOf(timeline, 'stopped', play), ...defending]
  const active = lessAll(play, [...unseen, ...paused])
  const own: Happening[] = timeline.filter(({ elapsed }) => elapsed >= teleop.from)
  const before = timeline.filter(({ elapsed }) => elapsed < teleop.from)
  const noted = timeline.some(({ what }) => what === 'collected')
  const collected = before.findLastIndex(({ what }) => what === 'collected')
  const placedLast = before.findLastIndex(({ what }) => placements.has(what))
  const collectedBefore = noted ? collected > placedLast : null
  const watch: Watch = { timeline: own, play, unseen, paused, collectedBefore }
  return { watch, own, departs, defending, active }
}

function teleopOf(
  observation: Observation,
  timeline: readonly Happening[],
  teleop: Interval,
  stop: number | null,
): SeenTeleop {
  const { watch, own, departs, defending, active } = watched(observation, timeline, teleop, stop)
  const { play } = watch
  const beside = observation.timeline
    ? { lost: 0, defended: 0 }
    : { lost: observation.lostSeconds ?? 0, defended: observation.defence?.playedSeconds ?? 0 }
  const goals = placedIn(observation, timeline, { teleop, period: 'teleop' })
  const departed: Departure = departs === 'unknown' ? 'unknown' : departs === null ? 'never' : teleop.to - departs
  return {
    active: Math.max(0, lengthOf(active) - beside.lost - beside.defended),
    goals,
    departed: stop !== null && stop < teleop.to && typeof departs !== 'number' ? 'unknown' : departed,
    ...tripsOf(watch),
    sources: sourcesOf(own),
    defence: defenceOf(observation, { own, play, active, defending: beside.defended + lengthOf(defending) }),
  }
}

function sourcesOf(timeline: readonly Happening[]): { [source: string]: number } {
  const sources: { [source: string]: number } = {}
  for (const { what, source, n = 1 } of timeline)
    if (what === 'collected' && source !== undefined) sources[source] = (sources[source] ?? 0) + n
  return sources
}

function defenceOf(
  { timeline }: Observation,
  { own, play, active, defending }: { own: Happening[]; play: Interval; active: Interval[]; defending: number },
): SeenDefence {
  if (!timeline) return { played: defending, received: null }
  const defended = intervalsOf(timeline, 'defended', play)
  const seconds = active.reduce((sum, each) => sum + overlap(each, defended), 0)
  const placed: GoalCounts = {}
  const all: GoalCounts = {}
  for (const { what, goal = '', n = 1, elapsed } of own) {
    if (!placements.has(what)) continue
    addTo(all, goal, { scored: n, missed: 0 })
    if (contains(defended, elapsed)) addTo(placed, goal, { scored: n, missed: 0 })
  }
  const attempts = attemptsOf(placed)
  const freeSeconds = lengthOf(active) - seconds
  return { played: defending, received: { seconds, attempts, freeSeconds, freeAttempts: attemptsOf(all) - attempts } }
}
