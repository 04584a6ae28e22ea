import type { Outcome } from '../statistics/index.ts'

/** +1 that red had more points, −1 that blue had, 0 a tie. */
export type Came = 1 | 0 | -1

/** Red's share of a win: a tie is half of one. */
export const shareOf = (came: Came): number => (came + 1) / 2

/** The one chance that stands for win, tie and loss. */
export const chanceOf = ({ win, tie }: Pick<Outcome, 'win' | 'tie'>): number => win + tie / 2

/**
 * Ranked probability score of loss, tie and win: a forecast of a tie is nearer to a win than one of a loss. From 0 to 1.
 *
 * Source: Epstein, Journal of Applied Meteorology 8 (1969), 985–987, with the divisor of Murphy (1970), as Constantinou & Fenton use it
 * for football, Journal of Quantitative Analysis in Sports 8 (2012), issue 1.
 */
export function rankedProbabilityScore({ win, loss }: Pick<Outcome, 'win' | 'loss'>, came: Came): number {
  const lost = came === -1 ? 1 : 0
  const won = came === 1 ? 1 : 0
  // Both sums of the formula: up to the loss, and up to the tie, which is all but the win.
  return ((loss - lost) ** 2 + (win - won) ** 2) / 2
}

/** (chance − share)². */
export const brierOf = (chance: number, came: Came): number => (chance - shareOf(came)) ** 2
