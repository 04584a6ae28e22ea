import type { Duration } from '../../../src/model/documents/types.ts'
import { mean } from '../../../src/model/duration/index.ts'

const hundredth = (value: number): number => Math.round(value * 100) / 100

/** Whether the bar's end can be moved: measured times are what they are. */
export const canMove = (duration: Duration): boolean => duration.kind !== 'samples'

/** The same kind and shape of duration with another mean (s): everything is stretched alike. */
export function withMean(duration: Duration, target: number): Duration {
  if (duration.kind === 'samples') return duration
  if (duration.kind === 'fixed') return { kind: 'fixed', seconds: hundredth(target) }
  const now = mean(duration)
  if (now <= 0) return { kind: 'fixed', seconds: hundredth(target) }
  const factor = target / now
  if (duration.kind === 'lognormal') return { ...duration, median: Math.max(0.01, hundredth(duration.median * factor)) }
  return {
    kind: 'range',
    low: hundredth(duration.low * factor),
    likely: hundredth(duration.likely * factor),
    high: hundredth(duration.high * factor),
  }
}

/** The same mean said in another way, with a spread of about a quarter where one is needed. */
export function asKind(duration: Duration, kind: Duration['kind']): Duration {
  if (duration.kind === kind) return duration
  const now = hundredth(mean(duration))
  if (kind === 'fixed') return { kind, seconds: now }
  if (kind === 'lognormal') return { kind, median: Math.max(0.01, now), spread: 1.25 }
  if (kind === 'range') return withMean({ kind, low: now * 0.7, likely: now * 0.95, high: now * 1.6 }, now)
  return { kind, seconds: [hundredth(now * 0.8), now, hundredth(now * 1.2)] }
}
