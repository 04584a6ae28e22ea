import type { Duration } from '../../documents/types.ts'

/** Furthest skewness that a range (a beta-PERT, whose shapes add up to 6) can have, at shapes 1 and 5. */
const smallest = 1 / 6

/** Bounds of the contract of a Duration: the longest time (s) and the widest log-normal. */
const bounds = { seconds: 600, spread: 4, oneInAThousand: 3.0902 }

/**
 * A Duration with the mean, standard deviation and skewness of computed times: a range where one has them, which is where
 * they are not too lopsided and stay above 0, else a log-normal with their mean and standard deviation, and the times themselves
 * where that would reach beyond what a Duration may be.
 *
 * With shapes 6p and 6(1 − p) a beta on [low, high] has mean low + p·width, variance p(1 − p)·width²/7 and skewness
 * (1 − 2p)·√7 / (4·√(p(1 − p))), from which p, width and low follow.
 */
export function durationOf(times: readonly number[]): Duration {
  const count = times.length
  const mean = times.reduce((sum, time) => sum + time, 0) / count
  const variance = times.reduce((sum, time) => sum + (time - mean) ** 2, 0) / count
  const sd = Math.sqrt(variance)
  if (sd <= 1e-9 * mean) return { kind: 'fixed', seconds: mean }
  const skewness = times.reduce((sum, time) => sum + (time - mean) ** 3, 0) / count / sd ** 3
  // With k = 4·skewness/√7: (1 − 2p)/√(p(1 − p)) = k, so that 1 − 2p = k/√(4 + k²).
  const k = (4 * skewness) / Math.sqrt(7)
  const p = (1 - k / Math.sqrt(4 + k * k)) / 2
  const width = sd * Math.sqrt(7 / (p * (1 - p)))
  const low = mean - p * width
  if (p >= smallest && p <= 1 - smallest && low >= 0 && low + width <= bounds.seconds) {
    return { kind: 'range', low, likely: low + ((6 * p - 1) / 4) * width, high: low + width }
  }
  const relative = Math.log1p(variance / mean ** 2)
  const [median, spread] = [mean * Math.exp(-relative / 2), Math.exp(Math.sqrt(relative))]
  if (spread > bounds.spread || median * spread ** bounds.oneInAThousand > bounds.seconds) {
    return { kind: 'samples', seconds: [...times] }
  }
  return { kind: 'lognormal', median, spread }
}
