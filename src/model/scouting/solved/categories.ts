import { voided } from '../../event/order.ts'
import { alliances, type Match, type Result, type ResultSide } from '../types.ts'
import { type Solved, solveTotals, type Total } from './solve.ts'

export const categories = ['total', 'autonomous', 'goals', 'finishes'] as const
export type Category = (typeof categories)[number]

/** A category's points on one side; null where the result does not tell. `total` is without points from fouls. */
export function pointsIn({ points }: ResultSide, category: Category): number | null {
  if (category === 'total') return points.total - (points.fromFouls ?? 0)
  return points[category] ?? null
}

/** Totals of all alliances that played, with the robots that came. Results that a later play voids are left out. */
export function totalsOf(matches: readonly Match[], results: readonly Result[], category: Category): Total[] {
  const known = new Map(matches.map((match) => [match.id, match]))
  const gone = voided(matches)
  return results.flatMap((result) => {
    const match = known.get(result.match)
    if (!match || match.phase === 'practice' || gone.has(match.id)) return []
    return alliances.flatMap((alliance): Total[] => {
      const value = pointsIn(result[alliance], category)
      const teams = match[alliance].filter(({ state }) => state !== 'absent').map(({ team }) => team)
      return value === null ? [] : [{ teams, value }]
    })
  })
}

/** Contributions by category; a category that results do not tell is left out. */
export function solvedByCategory(
  matches: readonly Match[],
  results: readonly Result[],
  teams: readonly string[],
): Map<Category, Solved> {
  const found = new Map<Category, Solved>()
  for (const category of categories) {
    const solved = solveTotals(totalsOf(matches, results, category), teams)
    if (solved) found.set(category, solved)
  }
  return found
}
