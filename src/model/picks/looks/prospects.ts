import type { Rating } from '../scores/types.ts'
import type { Prospect } from './gradient.ts'

/** A candidate of the coming decision: what inviting it gains by common draw, its rating, and what its matches differ by. */
export interface Candidate {
  team: string
  /** Chance to win with it less that with the replacement, by common draw. */
  gains: Float64Array
  rating: Pick<Rating, 'points'>
  /** Variance of what one match of it says about its expected points (points²). */
  perMatch: number
}

/**
 * What one point more of a partner is worth to us: gains regressed on the candidates' own points over the draws, all candidates
 * together. Partners and opponents vary too, but independently of it, so that they only blur the line.
 */
export function worthOfPoint(candidates: readonly Candidate[]): number {
  let [products, squares] = [0, 0]
  for (const { gains, rating } of candidates) {
    const [gain, points] = [meanOf(gains), meanOf(rating.points)]
    for (let d = 0; d < gains.length; d++) {
      const off = (rating.points[d] as number) - points
      products += off * ((gains[d] as number) - gain)
      squares += off * off
    }
  }
  return squares > 0 ? Math.max(0, products / squares) : 0
}

/**
 * Candidates as prospects in chance to win: the mean gain, how far it is not known because the candidate is not, and how far
 * one more look at it errs, both by what a point is worth.
 */
export function prospectsOf(candidates: readonly Candidate[]): Prospect[] {
  const worth = worthOfPoint(candidates)
  return candidates.map(({ team, gains, rating: { points }, perMatch }) => {
    const mean = meanOf(points)
    const variance = points.reduce((sum, own) => sum + (own - mean) ** 2, 0) / points.length
    return { team, mean: meanOf(gains), variance: worth * worth * variance, noise: worth * worth * perMatch }
  })
}

const meanOf = (values: Float64Array): number => values.reduce((sum, own) => sum + own, 0) / values.length
