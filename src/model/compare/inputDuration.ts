import { inner } from '../documents/sentences.ts'
import type { Duration } from '../documents/types.ts'
import { type AnyDuration, support } from '../duration/index.ts'
import type { Inner } from '../said.ts'
import type { Allowed } from './sentences.ts'

const mustBe = (allowed: Allowed): Inner => inner('mustBe', { allowed })

const kinds: readonly unknown[] = ['fixed', 'range', 'lognormal', 'samples', 'shifted']

/** Whether what a pointer found is a Duration. */
export function isDuration(found: unknown): found is AnyDuration {
  return typeof found === 'object' && found !== null && kinds.includes((found as { kind?: unknown }).kind)
}

/**
 * Every draw of the Duration multiplied by a factor of at least 0. All kinds keep their shape: the median of a
 * log-normal is multiplied, its spread stays.
 */
export function scaled(duration: AnyDuration, factor: number): AnyDuration {
  switch (duration.kind) {
    case 'fixed':
      return { kind: 'fixed', seconds: duration.seconds * factor }
    case 'range':
      return {
        kind: 'range',
        low: duration.low * factor,
        likely: duration.likely * factor,
        high: duration.high * factor,
      }
    case 'lognormal':
      return { kind: 'lognormal', median: duration.median * factor, spread: duration.spread }
    case 'samples':
      return { kind: 'samples', seconds: duration.seconds.map((seconds) => seconds * factor) }
    case 'shifted':
      return { kind: 'shifted', base: scaled(duration.base, factor) as Duration, by: duration.by * factor }
  }
}

/**
 * Every draw of the Duration moved by seconds, not below 0. A log-normal that is moved is no log-normal any more, nor a
 * range that is cut off at 0 a range: those become the duration module's shifted kind.
 */
export function moved(duration: AnyDuration, by: number): AnyDuration {
  const floor = (seconds: number) => Math.max(0, seconds + by)
  switch (duration.kind) {
    case 'fixed':
      return { kind: 'fixed', seconds: floor(duration.seconds) }
    case 'samples':
      return { kind: 'samples', seconds: duration.seconds.map(floor) }
    case 'range':
      return duration.low + by < 0
        ? { kind: 'shifted', base: duration, by }
        : { kind: 'range', low: duration.low + by, likely: duration.likely + by, high: duration.high + by }
    case 'lognormal':
      return by === 0 ? duration : { kind: 'shifted', base: duration, by }
    case 'shifted':
      return { kind: 'shifted', base: duration.base, by: duration.by + by }
  }
}

/** What is wrong with a Duration after an input was applied to it, as the end of a sentence, or null. */
export function badDuration(duration: AnyDuration, isPace: boolean): Inner | null {
  switch (duration.kind) {
    case 'fixed':
      if (!(duration.seconds >= 0 && Number.isFinite(duration.seconds))) return mustBe('at least 0 s')
      break
    case 'range': {
      const { low, likely, high } = duration
      if (!(low >= 0 && Number.isFinite(high))) return mustBe('at least 0 s')
      if (!(low <= likely && likely <= high)) {
        return inner('keepsOrder', { low, likely, high })
      }
      break
    }
    case 'lognormal':
      if (!(duration.median >= 0 && Number.isFinite(duration.median))) return mustBe('at least 0 s')
      if (!(duration.spread >= 1 && Number.isFinite(duration.spread))) return mustBe('a spread of at least 1')
      break
    case 'samples':
      if (!duration.seconds.every((seconds) => seconds >= 0 && Number.isFinite(seconds))) return mustBe('at least 0 s')
      break
    case 'shifted':
      if (!Number.isFinite(duration.by)) return mustBe('finite')
      break
  }
  if (isPace && support(duration)[0] < 1 - 1e-12) return inner('keepsPace', {})
  return null
}
