import { equal } from '../../../src/model/match/reckoning.ts'
import type { Chance, Measured } from '../../../src/model/match/types.ts'

/** The second line-up's lead less the first's, match by match on shared luck. */
export interface PairedDifference {
  /** Matches that both have played. */
  matches: number
  mean: Measured
  ahead: Chance
  level: Chance
  distribution: [number, number][]
}

/** What two line-ups' leads of the same matches differ by: its mean with its error, and how often the second does better. */
export function pairedDifference(first: readonly number[], second: readonly number[]): PairedDifference | null {
  const matches = Math.min(first.length, second.length)
  if (matches === 0) return null
  let [sum, squares, ahead, level] = [0, 0, 0, 0]
  const counts = new Map<number, number>()
  for (let match = 0; match < matches; match++) {
    const difference = second[match]! - first[match]!
    sum += difference
    squares += difference * difference
    if (difference > equal) ahead++
    else if (difference >= -equal) level++
    const whole = Math.round(difference)
    counts.set(whole, (counts.get(whole) ?? 0) + 1)
  }
  const mean = sum / matches
  const variance = matches > 1 ? Math.max(0, squares - matches * mean * mean) / (matches - 1) : 0
  const chance = (times: number): Chance => {
    // As in the report: two more of each kind, so that an error is never 0 (Agresti & Coull 1998).
    const near = (times + 2) / (matches + 4)
    return { probability: times / matches, standardError: Math.sqrt((near * (1 - near)) / (matches + 4)) }
  }
  return {
    matches,
    mean: { mean, sd: Math.sqrt(variance), standardError: Math.sqrt(variance / matches) },
    ahead: chance(ahead),
    level: chance(level),
    distribution: [...counts]
      .sort(([a], [b]) => a - b)
      .map(([value, times]): [number, number] => [value, times / matches]),
  }
}
