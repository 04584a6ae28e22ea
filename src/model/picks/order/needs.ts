import type { Game } from '../../documents/types.ts'
import type { Rating } from '../scores/index.ts'
import { believedOf, largerIn } from './believed.ts'
import type { Need, Part } from './types.ts'

/** A need is told where it is this likely, and at least so many points a robot. */
const likely = 0.75
const least = 1

/** What an alliance brings less of, a robot, than those that it may meet; the largest first. */
export function needsOf(game: Game, ours: readonly Rating[], others: readonly Rating[]): Need[] {
  if (ours.length === 0 || others.length === 0) return []
  return partsOf(game)
    .map((part): Need => {
      const [own, theirs] = [meanOf(game, ours, part), meanOf(game, others, part)]
      return {
        part,
        short: believedOf(theirs.map((other, d) => other - (own[d] as number))),
        chance: largerIn(theirs, own),
      }
    })
    .filter(({ short, chance }) => chance >= likely && short.mean >= least)
    .sort((a, b) => b.short.mean - a.short.mean)
}

/** Which needs a team answers: it brings at least half of what is short more than our robots do. */
export function answersOf(game: Game, needs: readonly Need[], of: { team: Rating; ours: readonly Rating[] }): number[] {
  return needs.flatMap(({ part, short }, k) => {
    const [own, brings] = [meanOf(game, of.ours, part), meanOf(game, [of.team], part)]
    const more = brings.reduce((sum, points, d) => sum + points - (own[d] as number), 0) / brings.length
    return more >= short.mean / 2 ? [k] : []
  })
}

const partsOf = ({ goals, finishes }: Game): Part[] => [
  { kind: 'autonomous' },
  ...goals.map(({ id }): Part => ({ kind: 'goal', goal: id })),
  ...(finishes.length > 0 ? [{ kind: 'finishing' } as const] : []),
]

/** Points of a part, the mean of robots, by draw. What pays by the second counts by its pieces, as if each held for a second. */
function meanOf({ goals }: Game, ratings: readonly Rating[], part: Part): Float64Array {
  const rows = ratings.map(({ autonomous, finishing, goals: points, pieces }) => {
    if (part.kind === 'autonomous') return autonomous
    if (part.kind === 'finishing') return finishing
    const place = goals.findIndex(({ id }) => id === part.goal)
    return (goals[place]?.award.kind === 'hold' ? pieces : points)[place] as Float64Array
  })
  return (rows[0] as Float64Array).map((_, d) => rows.reduce((sum, row) => sum + (row[d] as number), 0) / rows.length)
}
