import type { Happening, Observation, Row } from '../../../src/model/scouting/types.ts'
import type { Draft, Tap } from './draft.ts'
import { amount } from './form.ts'

/** What a record's contract takes as a time (s). */
const bounds = { low: -60, high: 1200 }

/** A time or place within tenths: nobody taps more exactly, and as a code such a tap takes three bytes. */
const tenths = (value: number) => Math.round(value * 10) / 10

const within = (seconds: number) => tenths(Math.min(bounds.high, Math.max(bounds.low, seconds)))

/** Only what was said: an undefined field would be lost on the way through JSON, and then be another content than was kept. */
function present<T extends object>(fields: T): T {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as T
}

function happening(tap: Tap, shift: number): Happening {
  const { period: _, elapsed, x, y, ...rest } = tap
  const place = x === undefined || y === undefined ? {} : { x: tenths(x), y: tenths(y) }
  return present({ ...rest, ...place, elapsed: within(elapsed + shift) })
}

/** By goal and period, in the order in which they were first counted. */
export function countsOf(taps: readonly Tap[]): NonNullable<Observation['counts']> {
  const counts = new Map<string, { goal: string; period: 'auto' | 'teleop'; scored: number; missed: number }>()
  for (const { goal, what, period = 'teleop', n } of taps) {
    if (goal === undefined || (what !== 'scored' && what !== 'missed')) continue
    const key = `${period} ${goal}`
    const entry = counts.get(key) ?? { goal, period, scored: 0, missed: 0 }
    entry[what] += amount({ n })
    counts.set(key, entry)
  }
  return [...counts.values()]
}

/** From where it comes, and as which of a device's records. */
export interface Origin {
  device: string
  sequence: number
}

/**
 * A finished draft as the document that is sent. Times are shifted with the clock; x and y are in the coordinates of the
 * robot's own alliance, as all of a game's are. What a timeline says is not said a second time beside it: a stop, lost time and
 * defence are its intervals, and the departure its `left`, which a record without a timeline has as `departedAt`.
 */
export function observationOf(
  { id, about, clock, said, scout, replaces, game: { revision: game } }: Draft,
  taps: readonly Tap[],
  { device, sequence }: Origin,
): Observation {
  const { match, team, subject, origin, identifiedBy, mode, driver, robotRevision } = about
  const head = { format: 1 as const, id, match, team, subject, origin, scout, device, sequence, replaces, game }
  const note = said.note.trim() || undefined
  if (said.absent) return present({ ...head, identifiedBy, absent: true, note })
  const timeline =
    mode === 'timeline'
      ? taps.map((tap) => happening(tap, clock.shift)).sort((a, b) => a.elapsed - b.elapsed)
      : undefined
  const { attempted, achieved, minor, major, startSpot, leftStart, routine, lostSeconds, defending, defended } = said
  const departed = mode === 'counts' ? taps.findLast(({ what }) => what === 'left')?.elapsed : undefined
  return present({
    ...head,
    identifiedBy,
    driver,
    robotRevision,
    startSpot,
    leftStart,
    routine: routine?.trim() || undefined,
    departedAt: departed === undefined ? undefined : Math.max(0, within(departed + clock.shift)),
    timeline,
    counts: mode === 'counts' ? countsOf(taps) : undefined,
    finish:
      attempted === undefined && achieved === undefined
        ? undefined
        : { attempted: attempted ?? null, achieved: achieved ?? null },
    defence:
      mode === 'counts' && (defending !== undefined || defended !== undefined)
        ? { playedSeconds: defending ?? 0, received: defended ?? 'none' }
        : undefined,
    lostSeconds: mode === 'counts' ? lostSeconds : undefined,
    fouls: minor + major > 0 ? { minor, major } : undefined,
    note,
  })
}

/** The document with what belongs to its way. */
export function rowOf(draft: Draft, taps: readonly Tap[], origin: Origin & { made: string }): Row {
  const { id, event, scout, about, reason } = draft
  const { device, sequence, made } = origin
  return present({
    id,
    kind: 'observation' as const,
    event,
    device,
    sequence,
    scout,
    made,
    seat: about.seat ?? undefined,
    reason: reason?.trim() || undefined,
    body: observationOf(draft, taps, origin),
  })
}

/** What the check at the end repeats, by goal in the order of the taps. */
export function tallyOf(taps: readonly Tap[]): { goal: string; scored: number; missed: number; about: boolean }[] {
  const tally = new Map<string, { goal: string; scored: number; missed: number; about: boolean }>()
  for (const { goal, what, n, counted } of taps) {
    if (goal === undefined || (what !== 'scored' && what !== 'missed')) continue
    const entry = tally.get(goal) ?? { goal, scored: 0, missed: 0, about: false }
    entry[what] += amount({ n })
    entry.about ||= counted === 'estimate'
    tally.set(goal, entry)
  }
  return [...tally.values()]
}
