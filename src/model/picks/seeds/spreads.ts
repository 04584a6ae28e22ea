import type { Game } from '../../documents/types.ts'
import { Sums } from '../scores/fit.ts'
import { type Lot, rowsOf } from '../scores/sibling.ts'
import { TraitsOf } from '../scores/traits.ts'
import type { Played, RatedNumbers, Rating } from '../scores/types.ts'

/** Simulated matches that a match to come rests on, at least. */
export const matchesEach = 500

/**
 * A match from which results are drawn without playing it. Numbers of ours and theirs come in turn, at 2 · k and 2 · k + 1:
 * `fitted` by common draw, `own` by simulated match.
 */
export interface MatchSpread {
  fitted: Float64Array
  own: Float64Array
  played: Played
  /** Points come whole. */
  whole: boolean
}

/** What simulated matches say of each of them with other draws: their scores on one line over what is expected of alliances. */
export function spreadsOf(game: Game, teams: readonly RatedNumbers[], lots: readonly Lot[]): MatchSpread[] {
  const traits = new TraitsOf(game)
  const rows = rowsOf(traits, teams, lots)
  const sums = new Sums(rows.width)
  for (let k = 0; k < rows.count; k++)
    for (const side of [0, 1]) sums.add(rows.of(k, side), rows.scores[2 * k + side] as number)
  const coefficients = sums.coefficients()
  const scoreBy = (row: ArrayLike<number>) => coefficients.reduce((sum, own, k) => sum + own * (row[k] as number), 0)
  const ratings = new Map(teams.map(({ team, rating }) => [team, rating]))
  const whole = rows.scores.every(Number.isInteger)
  let at = 0
  return lots.map(({ pairing, played }): MatchSpread => {
    const own = Float64Array.from(played.scores, (_, k) => scoreBy(rows.of(at + (k >> 1), k & 1)))
    at += played.scores.length / 2
    const [ours, theirs] = [pairing.ours, pairing.theirs].map((side) =>
      traits.by(side.map((team) => ratings.get(team) as Rating)),
    ) as [ReturnType<TraitsOf['by']>, ReturnType<TraitsOf['by']>]
    const fitted = Float64Array.from({ length: 2 * ours.expected.length }, (_, k) =>
      scoreBy(
        k & 1
          ? traits.row({ own: theirs, other: ours, at: k >> 1 })
          : traits.row({ own: ours, other: theirs, at: k >> 1 }),
      ),
    )
    return { fitted, own, played, whole }
  })
}

/**
 * One of the simulated matches for a draw: of four taken at random the one whose fitted scores are nearest to the draw's, so
 * that bonuses and fouls belong to scores like these.
 */
export function pickOne({ fitted, own }: MatchSpread, draw: number, words: Uint32Array): number {
  const count = own.length / 2
  const [ours, theirs] = [fitted[2 * draw] as number, fitted[2 * draw + 1] as number]
  let best = 0
  let least = Number.POSITIVE_INFINITY
  for (let k = 0; k < 4; k++) {
    const record = Math.floor(((words[k] as number) / 2 ** 32) * count)
    const gap = Math.abs((own[2 * record] as number) - ours) + Math.abs((own[2 * record + 1] as number) - theirs)
    if (gap < least) {
      best = record
      least = gap
    }
  }
  return best
}

/** The score that a simulated match would have come to with the robots of a draw. */
export function movedScore(
  { fitted, own, played, whole }: MatchSpread,
  { record, draw, side }: { record: number; draw: number; side: number },
): number {
  const moved =
    (played.scores[2 * record + side] as number) +
    (fitted[2 * draw + side] as number) -
    (own[2 * record + side] as number)
  return whole ? Math.round(moved) : moved
}
