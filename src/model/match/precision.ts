import type { Sums } from './tally.ts'

/** Matches that are added up together: whoever plays them, sums are formed in the same order. */
export const blockSize = 500
/** A precision is looked at only after so many matches. */
const atLeast = 1000

export type Outcomes = Pick<Sums, 'matches' | 'wins' | 'ties'>

/**
 * Standard error of win + ½ tie, as that of a counted share with two more of each kind, so that it is never 0.
 *
 * Source: Agresti & Coull, Approximate is better than 'exact' for interval estimation of binomial proportions (1998).
 */
export function winError({ matches, wins, ties }: Outcomes): number {
  const share = (wins + ties / 2 + 2) / (matches + 4)
  return Math.sqrt((share * (1 - share)) / (matches + 4))
}

/** Whether the standard error of win + ½ tie is small enough, looked at after whole blocks only. */
export function preciseEnough(outcomes: Outcomes, precision: number | undefined): boolean {
  const { matches } = outcomes
  if (precision === undefined || matches < atLeast || matches % blockSize !== 0) return false
  return winError(outcomes) <= precision
}
