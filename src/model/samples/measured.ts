import type { TimedTrial } from '../documents/timing.ts'
import type { Duration } from '../documents/types.ts'

/** Fewer measured times are not a distribution. */
const least = 3

/** The measured times that nobody struck as a Duration (s); null for fewer than three. */
export function measured(trials: readonly TimedTrial[]): Extract<Duration, { kind: 'samples' }> | null {
  const kept = trials.filter(({ struck }) => struck === null)
  return kept.length < least ? null : { kind: 'samples', seconds: kept.map(({ seconds }) => seconds) }
}
