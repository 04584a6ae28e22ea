import type { TimedTrial } from '../../../../src/model/documents/timing.ts'

export type Tap = 'start' | 'next' | 'stop'

/** The watch and the times taken. Moments are milliseconds since 1970 of the clock that presses are stamped with. */
export interface Watch {
  startedAt: number | null
  trials: TimedTrial[]
  /** Presses that can be taken back, newest last, with what stood before. */
  past: { tap: Tap; startedAt: number | null; trial: string | null }[]
}

/** So many presses can be taken back. */
const most = 20

const hundredth = (seconds: number): number => Math.round(seconds * 100) / 100

/** Longest single time that a document takes (s). */
const longest = 600

const takenAt = (watch: Watch, id: string, at: number): TimedTrial => ({
  id,
  seconds: Math.min(longest, hundredth(Math.max(0, at - watch.startedAt!) / 1000)),
  at: new Date(at).toISOString(),
  struck: null,
})

/** A press at a moment. What does not fit, such as a stop of a watch that stands, changes nothing. `id`: of a time that ends. */
export function tapped(watch: Watch, tap: Tap, at: number, id: string): Watch {
  const { startedAt, trials } = watch
  if ((tap === 'start') !== (startedAt === null)) return watch
  const ended = tap === 'start' ? null : takenAt(watch, id, at)
  return {
    startedAt: tap === 'stop' ? null : at,
    trials: ended ? [...trials, ended] : trials,
    past: [...watch.past, { tap, startedAt, trial: ended?.id ?? null }].slice(-most),
  }
}

/** Takes the last press back: its time is gone, and the watch runs on from where it had begun, or stands. */
export function tookBack(watch: Watch): Watch {
  const last = watch.past.at(-1)
  if (!last) return watch
  return {
    startedAt: last.startedAt,
    trials: watch.trials.filter(({ id }) => id !== last.trial),
    past: watch.past.slice(0, -1),
  }
}

/** Struck with a reason, or counting again (null). */
export const struck = (trials: readonly TimedTrial[], id: string, reason: string | null): TimedTrial[] =>
  trials.map((trial) => (trial.id === id ? { ...trial, struck: reason } : trial))
