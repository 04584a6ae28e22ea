import type { Game } from '../../documents/types.ts'

/** The finish that an observed robot goes for, what a failure earns, and how its chance follows from shares. */
export interface FinishHabit {
  finish: string
  otherwise: string | null
  /** Chance of success with which expected points are those of the shares (by finish, none at the end). */
  success(shares: readonly number[]): number
}

/**
 * A match knows one finish that is tried and one that a failure earns; what was seen are shares of all. So the robot goes for
 * the one that brings most, and succeeds as often as gives the points of the shares.
 */
export function finishHabit({ finishes }: Pick<Game, 'finishes'>, shares: readonly number[]): FinishHabit | null {
  const brings = (k: number) => (shares[k] as number) * finishes[k]!.points
  const order = finishes.map((_, k) => k).sort((a, b) => brings(b) - brings(a))
  const main = order[0]
  if (main === undefined || !(brings(main) > 0)) return null
  const none = shares[finishes.length] as number
  const second = order.find(
    (k) => k !== main && finishes[k]!.points < finishes[main]!.points && (shares[k] as number) > none,
  )
  const [most, least] = [finishes[main]!.points, second === undefined ? 0 : finishes[second]!.points]
  return {
    finish: finishes[main]!.id,
    otherwise: second === undefined ? null : finishes[second]!.id,
    success: (own) => {
      const expected = finishes.reduce((sum, { points }, k) => sum + (own[k] as number) * points, 0)
      return Math.min(1, Math.max(0, (expected - least) / (most - least)))
    },
  }
}
