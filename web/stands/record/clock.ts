import type { Clock } from '../../../src/model/documents/types.ts'
import type { Running } from './draft.ts'

/** Seconds by the clock, without its shift: what taps are written with. */
export function rawElapsed(clock: Running, now: number): number {
  return clock.base + (clock.since === null ? 0 : ((now - clock.since) / 1000) * clock.speed)
}

/** Seconds since the match's start (s). */
export const elapsedOf = (clock: Running, now: number): number => rawElapsed(clock, now) + clock.shift

export const started = (clock: Running, now: number): Running => ({ ...clock, since: clock.since ?? now })

export const stopped = (clock: Running, now: number): Running => ({
  ...clock,
  base: rawElapsed(clock, now),
  since: null,
})

export function atSpeed(clock: Running, speed: number, now: number): Running {
  return { ...clock, base: rawElapsed(clock, now), since: clock.since === null ? null : now, speed }
}

export const shifted = (clock: Running, by: number): Running => ({ ...clock, shift: clock.shift + by })

export type Period = 'auto' | 'pause' | 'teleop' | 'over'

/** Seconds of a whole match. */
export const lengthOf = ({ auto, pause, teleop }: Clock): number => auto + pause + teleop

export function periodAt({ auto, pause, teleop }: Clock, elapsed: number): Period {
  if (elapsed < auto) return 'auto'
  if (elapsed < auto + pause) return 'pause'
  return elapsed < auto + pause + teleop ? 'teleop' : 'over'
}

/** What the hall's clock shows: seconds left of the period. */
export function leftOf(clock: Clock, elapsed: number): number {
  const { auto, pause, teleop } = clock
  switch (periodAt(clock, elapsed)) {
    case 'auto':
      return auto - elapsed
    case 'pause':
      return auto + pause - elapsed
    case 'teleop':
      return auto + pause + teleop - elapsed
    default:
      return 0
  }
}

/** '2:05', rounded up as such clocks do. */
export function minutes(seconds: number): string {
  const whole = Math.max(0, Math.ceil(seconds))
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`
}
