import type { GoalCount, GoalCounts } from './types.ts'

/** Adds pieces to a goal's count, times a weight. */
export function addTo(counts: GoalCounts, goal: string, { scored, missed }: GoalCount, weight = 1): void {
  const own = counts[goal] ?? { scored: 0, missed: 0 }
  counts[goal] = { scored: own.scored + weight * scored, missed: own.missed + weight * missed }
}

export function addAll(counts: GoalCounts, others: GoalCounts, weight = 1): void {
  for (const [goal, count] of Object.entries(others)) addTo(counts, goal, count, weight)
}

/** Pieces tried, hit or miss. */
export function attemptsOf(counts: GoalCounts): number {
  let sum = 0
  for (const goal in counts) {
    const { scored, missed } = counts[goal] as GoalCount
    sum += scored + missed
  }
  return sum
}
