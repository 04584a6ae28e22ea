/** With fewer times than this nobody can say what is usual. */
const least = 5
/** So many robust standard deviations from the median are far off. */
const threshold = 3
/** A time taken by hand is not more exact than this (s), so that nearly equal times make none of them an outlier. */
const byHand = 0.1

export interface FarOff {
  median: number
  /** 1.4826 · median absolute deviation (s), at least 0.1 s: a standard deviation that outliers do not move. */
  spread: number
  /** Times below `from` or above `to` are far off. */
  from: number
  to: number
  /** Where in the list they stand. */
  indices: number[]
}

/** The median, between the two middle ones where their number is even. */
function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const middle = Math.floor(sorted.length / 2)
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2
}

/**
 * Which measured times (s) lie farther from their median than three times 1.4826 · MAD; null for fewer than five. A hint for
 * people, never a reason to leave one out by itself. 1.4826 makes MAD the standard deviation of a normal distribution.
 * Source: Hampel, The influence curve and its role in robust estimation, J. Am. Stat. Assoc. 69, 1974.
 */
export function farOff(seconds: readonly number[]): FarOff | null {
  if (seconds.length < least) return null
  const middle = median(seconds)
  const spread = Math.max(byHand, 1.4826 * median(seconds.map((value) => Math.abs(value - middle))))
  const [from, to] = [middle - threshold * spread, middle + threshold * spread]
  const indices = seconds.flatMap((value, index) => (value < from || value > to ? [index] : []))
  return { median: middle, spread, from, to, indices }
}
